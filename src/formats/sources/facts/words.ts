/** The words of an identifier, in lower case: `wifiPassword`, `WIFI_PASSWORD` and `kWifiPassword` alike. */
export function wordsOf(name: string): string[] {
  return name
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replace(/([A-Z]+)([A-Z][a-z])/g, '$1 $2')
    .split(/[^A-Za-z\d]+/)
    .map((word) => word.toLowerCase())
    .filter((word) => word !== '' && word !== 'k');
}
