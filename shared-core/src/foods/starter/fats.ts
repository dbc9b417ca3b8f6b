import { readTable } from './table.ts';

/** Oils and fats. */
export const fats = readTable(`
NDB   | food              | state    | kcal    P    C     F fibre sugars   sat    LA   ALA EPA+DHA  Leu  Na | portions, g | also called
04053 | Olive oil         | as eaten |  884    0    0   100     0      0 13.81  9.76  0.76       0    0   2 | tbsp 13.5, tsp 4.5, cup 216 | oil, extra virgin olive oil, evoo
42231 | Flax oil          | as eaten |  884 0.11    0 99.98     0      0  8.98 14.25 53.37       0    -   0 | tbsp 13.6, cup 218 | flaxseed oil, linseed oil, omega oil
04593 | Fish oil, salmon  | as eaten |  902    0    0   100     0      - 19.87  1.54  1.06   31.26    -   0 | tsp 4.5, tbsp 13.6, cup 218 | fish oil, salmon oil
04589 | Cod liver oil     | as eaten |  902    0    0   100     0      - 22.61  0.94  0.94   17.87    -   0 | tsp 4.5, tbsp 13.6, cup 218 | fish oil cod liver
04582 | Canola oil        | as eaten |  884    0    0   100     0      0  7.37 18.64  9.14       0    -   0 | tbsp 14, tsp 4.5, cup 218 | rapeseed oil
04047 | Coconut oil       | as eaten |  892    0    0 99.06     0      0 82.48  1.68  0.02       0    0   0 | tbsp 13.6, tsp 4.5, cup 218 | coconut fat
04506 | Sunflower oil     | as eaten |  884    0    0   100     0      0  10.3  65.7     0       0    0   0 | tbsp 13.6, tsp 4.5, cup 218 | cooking oil, vegetable oil
01145 | Butter, unsalted  | as eaten |  717 0.85 0.06 81.11     0   0.06 50.49  2.17  0.32       0 0.08  11 | tbsp 14.2, pat 5, stick 113, cup 227 | butter
01003 | Ghee              | as eaten |  876 0.28    0 99.48     0      0 61.92  2.25  1.45       0 0.03   2 | tbsp 12.8, cup 205 | clarified butter
04025 | Mayonnaise        | as eaten |  680 0.96 0.57 74.85     0   0.57  11.7 38.94  5.33    0.01  0.1 635 | tbsp 13.8, cup 220 | mayo
04641 | Mayonnaise, light | as eaten |  238 0.37 9.23 22.22     0   3.56  3.45 11.35  1.52       0 0.03 827 | tbsp 15 | light mayo
`);
