/**
 * Millilitres in one kitchen measure, US customary, exact from the gallon of 231 cubic inches (UCUM [foz_us],
 * [tbs_us], [tsp_us], [cup_us]). Recipes and the household weights of the USDA tables mean these.
 */
export const millilitresPer = {
  mL: 1,
  cL: 10,
  dL: 100,
  L: 1000,
  tsp: 4.92892159375,
  tbsp: 14.78676478125,
  'fl oz': 29.5735295625,
  cup: 236.5882365,
} as const;
