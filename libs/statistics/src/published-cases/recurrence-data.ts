/** Ages in hours at the ten repairs of one system, watched until 1500 h.
 *
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.2 and 8.2.3.4
 */
export const nistRepairs = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478] as const;

/** Ages at 27 failures of one system, watched until 300.
 *
 * @source MIL-HDBK-189 (1981), appendix C, individual failure times
 */
export const handbookFailures = [
  2.6, 16.5, 16.5, 17, 21.4, 29.1, 33.3, 56.5, 63.1, 70.6, 73, 77.7, 93.9, 95.5, 98.1, 101.1, 132, 142.2,
  147.7, 149, 167.2, 190.7, 193, 198.7, 251.9, 282.5, 286.1,
] as const;

/** Days of service at which valve seats were replaced in 41 diesel engines, and the days each engine was watched.
 *
 * @source Nelson & Doganaksoy (1989), GE Research Report 89CRD239; Nelson (1995), Technometrics 37:147-157
 */
export const valveSeats = {
  eventUnits: [
    2, 3, 3, 3, 5, 6, 7, 8, 10, 10, 10, 10, 11, 11, 12, 12, 12, 12, 13, 13, 14, 15, 15, 15, 18, 18, 19, 19,
    20, 20, 22, 23, 23, 23, 24, 25, 25, 26, 26, 27, 27, 27, 29, 29, 33, 34, 34, 34,
  ],
  eventAges: [
    98, 326, 653, 653, 84, 87, 646, 92, 258, 328, 377, 621, 61, 539, 254, 276, 298, 640, 76, 538, 635, 349,
    404, 561, 120, 479, 323, 449, 139, 139, 573, 165, 408, 604, 249, 344, 497, 265, 586, 166, 206, 348, 410,
    581, 367, 202, 563, 570,
  ],
  spanUnits: [
    0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28,
    29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40,
  ],
  spanEnds: [
    761, 759, 667, 667, 665, 667, 663, 653, 653, 651, 650, 648, 644, 642, 641, 649, 631, 596, 614, 582, 589,
    593, 589, 606, 594, 613, 595, 389, 601, 601, 611, 608, 587, 603, 585, 587, 578, 578, 586, 585, 582,
  ],
} as const;
