/** What is used of the package, which brings no types. */
declare module 'heic-decode' {
  export default function decode(input: {
    readonly buffer: Uint8Array;
  }): Promise<{ readonly width: number; readonly height: number; readonly data: Uint8ClampedArray }>;
}
