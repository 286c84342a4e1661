/** Works something out when it is first asked for, and never again. */
export function once<T>(workOut: () => T): () => T {
  let known: { readonly value: T } | undefined;
  return () => {
    known ??= { value: workOut() };
    return known.value;
  };
}

/** Works something out of each object when it is first asked for, and keeps it as long as that. */
export function oncePer<Of extends object, T>(workOut: (of: Of) => T): (of: Of) => T {
  const known = new WeakMap<Of, { readonly value: T }>();
  return (of) => {
    const found = known.get(of) ?? { value: workOut(of) };
    known.set(of, found);
    return found.value;
  };
}
