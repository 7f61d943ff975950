/**
 * Valve seat replacements in 41 diesel engines: engine and day of each of the 48 replacements, and the day on which the
 * observation of each engine ended. Nelson (1995), Technometrics 37:147–157; Nelson & Doganaksoy (1989); also data set
 * `valveSeat` of the R package survival.
 */
export const valveSeat = {
  eventUnits: [
    2, 3, 3, 3, 5, 6, 7, 8, 10, 10, 10, 10, 11, 11, 12, 12, 12, 12, 13, 13, 14, 15, 15, 15, 18, 18, 19, 19,
    20, 20, 22, 23, 23, 23, 24, 25, 25, 26, 26, 27, 27, 27, 29, 29, 33, 34, 34, 34,
  ],
  eventAges: [
    98, 326, 653, 653, 84, 87, 646, 92, 258, 328, 377, 621, 61, 539, 254, 276, 298, 640, 76, 538, 635, 349,
    404, 561, 120, 479, 323, 449, 139, 139, 573, 165, 408, 604, 249, 344, 497, 265, 586, 166, 206, 348, 410,
    581, 367, 202, 563, 570,
  ],
  ends: [
    761, 759, 667, 667, 665, 667, 663, 653, 653, 651, 650, 648, 644, 642, 641, 649, 631, 596, 614, 582, 589,
    593, 589, 606, 594, 613, 595, 389, 601, 601, 611, 608, 587, 603, 585, 587, 578, 578, 586, 585, 582,
  ],
};
