/** The text of a script for a published page, bundled when the program is built. */
declare module '*?script' {
  const text: string;
  export default text;
}
