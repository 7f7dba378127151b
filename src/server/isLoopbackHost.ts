/** Whether a request's Host header names this machine itself: a loopback name or address, with any port. */
export function isLoopbackHost(host: string | undefined): boolean {
  return host !== undefined && /^(localhost|127(\.\d{1,3}){3}|\[::1\])(:\d{1,5})?$/i.test(host);
}
