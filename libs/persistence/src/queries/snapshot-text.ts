/**
 * A snapshot of PostgreSQL (`xmin:xmax:xip,...`: which transactions had ended) in fewer characters: the first number
 * whole, the others as distances from it, to the base 36.
 *
 * @example shortSnapshot('1000:1005:1000,1003') // => 'rs.5.0-3'
 */
export function shortSnapshot(text: string): string {
  const [xmin = '', xmax = '', running = ''] = text.split(':');
  const first = Number(xmin);
  const distance = (each: string): string => (Number(each) - first).toString(36);
  const list = running === '' ? '' : running.split(',').map(distance).join('-');
  return `${first.toString(36)}.${distance(xmax)}.${list}`;
}

/**
 * The snapshot as PostgreSQL writes it.
 *
 * @example longSnapshot('rs.5.0-3') // => '1000:1005:1000,1003'
 * @throws RangeError when the text is none
 */
export function longSnapshot(text: string): string {
  if (!/^[0-9a-z]{1,12}\.[0-9a-z]{1,12}\.(?:[0-9a-z]{1,12}(?:-[0-9a-z]{1,12})*)?$/.test(text))
    throw new RangeError('this is no place in a feed');
  const [xmin = '', xmax = '', running = ''] = text.split('.');
  const first = Number.parseInt(xmin, 36);
  const number = (each: string): string => String(first + Number.parseInt(each, 36));
  return `${String(first)}:${number(xmax)}:${running === '' ? '' : running.split('-').map(number).join(',')}`;
}
