/** A function of one object that is reckoned once for each: documents and judgements are never changed, only replaced. */
export function remembered<Of extends object, Made>(make: (of: Of) => Made): (of: Of) => Made {
  const known = new WeakMap<Of, { readonly made: Made }>();
  return (of) => {
    const before = known.get(of);
    if (before !== undefined) return before.made;
    const made = make(of);
    known.set(of, { made });
    return made;
  };
}
