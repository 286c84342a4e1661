/** The part that starts no other program. */
declare module 'recheck/lib/browser.js' {
  export { checkSync } from 'recheck';
}
