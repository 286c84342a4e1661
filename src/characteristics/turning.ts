/** Of whatever is read while somebody turns the crankshaft. Common practice, no source. */
export const TURNING = 'Keep hands clear while the crankshaft is turned: by hand, never by the starter.';
