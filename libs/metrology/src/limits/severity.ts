/** How bad it is to be outside. `notClassed`: the source gives no class. */
export const severities = ['notClassed', 'advisory', 'minor', 'major', 'dangerous'] as const;

/** A severity of `severities`. */
export type Severity = (typeof severities)[number];
