/** Whether a name is a time zone of the IANA database as this program knows it; days of the shop are counted in it. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
