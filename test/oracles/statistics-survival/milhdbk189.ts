/** Twenty-seven failures in a test of 300 hours. MIL-HDBK-189 (1981), Reliability Growth Management, appendix C. */
export const milHdbk189 = {
  eventAges: [
    2.6, 16.5, 16.5, 17, 21.4, 29.1, 33.3, 56.5, 63.1, 70.6, 73, 77.7, 93.9, 95.5, 98.1, 101.1, 132, 142.2,
    147.7, 149, 167.2, 190.7, 193, 198.7, 251.9, 282.5, 286.1,
  ],
  end: 300,
};
