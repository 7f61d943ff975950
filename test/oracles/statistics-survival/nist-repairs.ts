/** Ten repairs of one system observed for 1500 hours. NIST/SEMATECH e-Handbook, 8.2.3.4 and 8.4.5.2. */
export const nistRepairs = {
  eventAges: [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478],
  end: 1500,
};
