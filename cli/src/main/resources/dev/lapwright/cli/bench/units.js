// Units of what the page draws itself; all else comes from the server in the units that the state names.

let drawn = {};

/** Takes symbols and factors by the units of SI; none for SI itself. */
export function useUnits(measures) {
  drawn = measures ?? {};
}

/** Symbol that stands in the place of a unit. */
export const unit = (si) => drawn[si]?.symbol ?? si;

/** A number of a unit as it is shown. */
export const shown = (value, si) => value === null ? null : value * (drawn[si]?.factor ?? 1);

/** A list of them. */
export const shownAll = (list, si) => drawn[si] ? list.map((value) => shown(value, si)) : list;
