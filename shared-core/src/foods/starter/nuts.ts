import { readTable } from './table.ts';

/** Nuts, seeds, nut butters. */
export const nuts = readTable(`
NDB   | food                             | state    | kcal     P     C     F fibre sugars   sat    LA   ALA EPA+DHA  Leu  Na | portions, g | also called
12061 | Almonds                          | raw      |  579 21.15 21.55 49.93  12.5   4.35   3.8 12.32     0       0 1.47   1 | almond 1.2, cup 143 | almond
12155 | Walnuts                          | raw      |  654 15.23 13.71 65.21   6.7   2.61  6.13 38.09  9.08       0 1.17   2 | cup 100 | walnut
12087 | Cashews                          | raw      |  553 18.22 30.19 43.85   3.3   5.91  7.78  7.78  0.06       0 1.47  12 | | cashew
12151 | Pistachios                       | raw      |  560 20.16 27.17 45.32  10.6   7.66  5.91 14.09  0.29       0  1.6   1 | cup 123 | pistachio
12142 | Pecans                           | raw      |  691  9.17 13.86 71.97   9.6   3.97  6.18 20.63  0.99       0  0.6   0 | cup 99 | pecan
12120 | Hazelnuts                        | raw      |  628 14.95  16.7 60.75   9.7   4.34  4.46  7.83  0.09       0 1.06   0 | nut 1.4, cup 135 | hazelnut
12078 | Brazil nuts                      | raw      |  659 14.32 11.74  67.1   7.5   2.33 16.13 23.86  0.02       0 1.19   3 | nut 5, cup 133 | brazil nut
12131 | Macadamia nuts                   | raw      |  718  7.91 13.82 75.77   8.6   4.57 12.06   1.3  0.21       0  0.6   5 | cup 134 | macadamia, macadamias
16390 | Peanuts, dry-roasted             | as eaten |  587 24.35 21.26 49.66   8.4    4.9  7.72  9.69  0.03       0 1.54   6 | peanut 1, cup 146 | peanut, peanuts
16398 | Peanut butter, unsalted          | as eaten |  598 22.21 22.31 51.36     5  10.49 10.33 12.22  0.03       0 1.55  17 | tbsp 16, cup 258 | peanut butter, pb
12195 | Almond butter                    | as eaten |  614 20.96 18.82  55.5  10.3   4.43  4.15 13.61  0.01       - 1.48   7 | tbsp 16, cup 250 | almond paste
12006 | Chia seeds                       | dry      |  486 16.54 42.12 30.74  34.4      -  3.33  5.84 17.83       - 1.37  16 | | chia
12220 | Flaxseed                         | dry      |  534 18.29 28.88 42.16  27.3   1.55  3.66   5.9 22.81       0 1.24  30 | tbsp 10.3, tsp 3.4, cup 168 | flax, flax seed, linseed
12014 | Pumpkin seeds                    | dry      |  559 30.23 10.71 49.05     6    1.4  8.66 20.67  0.12       0 2.42   7 | cup 129 | pumpkin seed
12036 | Sunflower seeds                  | dry      |  584 20.78    20 51.46   8.6   2.62  4.46 23.05  0.06    0.01 1.66   9 | cup 140 | sunflower seed
12166 | Tahini                           | as eaten |  595    17 21.19 53.76   9.3   0.49  7.53 23.13  0.41       0  1.3 115 | tbsp 15 | sesame paste
12118 | Coconut milk, canned             | canned   |  197  2.02  2.81 21.33     -      - 18.92  0.23     -       - 0.15  13 | tbsp 15, cup 226 | coconut milk
09193 | Olives, black                    | canned   |  115  0.84  6.26 10.68   3.2      0  1.42  0.85  0.06       0 0.05 735 | large 4.4, small 3.2, tbsp 8.4 | olive, olives
19904 | Dark chocolate, 70 to 85 % cocoa | as eaten |  598  7.79  45.9 42.63  10.9  23.99 24.49  1.21  0.03       0    -  20 | bar 101 | chocolate, dark chocolate
`);
