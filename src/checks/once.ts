/** Works something out when it is first asked for, and never again. */
export function once<T>(workOut: () => T): () => T {
  let known: { readonly value: T } | undefined;
  return () => {
    known ??= { value: workOut() };
    return known.value;
  };
}
