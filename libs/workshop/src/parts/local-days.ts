const msPerDay = 86_400_000;

/** The local day so many days after another. */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * msPerDay).toISOString().slice(0, 10);
}
