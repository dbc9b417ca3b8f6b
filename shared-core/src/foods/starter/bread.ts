import { readTable } from './table.ts';

/** Bread and what is eaten like it. */
export const bread = readTable(`
NDB   | food                | state             | kcal     P     C    F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
18075 | Whole-wheat bread   | as eaten, complex |  252 12.45 42.71  3.5     6   4.34 0.72 1.44 0.14       0    - 455 | slice 32 | bread, brown bread, wholemeal bread, toast
18069 | White bread         | as eaten, quick   |  266  8.85 49.42 3.33   2.7   5.67  0.7 1.43 0.17       0    - 490 | slice 29 | white toast
18060 | Rye bread           | as eaten, complex |  259   8.5  48.3  3.3   5.8   3.85 0.63 0.74 0.06       0 0.58 603 | slice 32 | rye
18029 | Sourdough bread     | as eaten, complex |  272 10.75 51.88 2.42   2.2   4.62 0.53 0.79 0.06       0    - 602 | | sourdough, french bread, baguette
18001 | Bagel, plain        | as eaten, quick   |  264 10.56 52.38 1.32   1.6   8.43 0.36  0.5 0.02       0    - 422 | bagel 99, small 69, medium 105, large 131 | bagel, bagels
18041 | Pita, white         | as eaten, complex |  275   9.1  55.7  1.2   2.2    1.3 0.17 0.51 0.02       0 0.63 536 | large 60, small 28 | pita, pitta
18042 | Pita, whole-wheat   | as eaten, complex |  262   9.8 55.89 1.71   6.1   2.87 0.15 0.71 0.04       0 0.67 527 | large 64, small 28 | wholemeal pitta
18258 | English muffin      | as eaten, complex |  227  8.87 44.17 1.69   3.5   3.53 0.73 0.45 0.05       0 0.65 425 | muffin 57 | english muffins
18350 | Hamburger bun       | as eaten, complex |  279  9.77 50.12 3.91   1.8   7.28 0.84 1.59 0.18       0    - 494 | bun 44 | bun, burger bun, roll
18363 | Corn tortilla       | as eaten, complex |  218   5.7 44.64 2.85   6.3   0.88 0.45 1.39 0.03       0 0.71  45 | tortilla 24 | corn tortillas
18970 | Flour tortilla      | as eaten, complex |  297  8.01 49.27 7.58   2.4   2.66 1.23 1.76 0.39       0 0.46 742 | tortilla 49 | tortilla, wrap
18226 | Rye crispbread      | as eaten, complex |  334   9.6  80.4  0.9  22.9   1.01 0.11 0.35 0.05       0    - 557 | cracker 11 | crispbread
19816 | Rice cake           | as eaten, quick   |  387   8.2  81.5  2.8   4.2   0.88 0.57 0.97 0.01       0 0.68  26 | cake 9 | rice cakes
19813 | Pretzels, unsalted  | as eaten, quick   |  381   9.1  79.2  3.5   2.8      - 0.75 1.15 0.06       - 0.64 289 | twist 6 | pretzels
19806 | Popcorn, air-popped | as eaten, complex |  382    12  77.9  4.2  15.1      - 0.57 1.84 0.06       - 1.47   4 | cup 8 | popcorn
18293 | Pancake             | as eaten, complex |  227   6.4  28.3  9.7     -      - 2.12 3.91 0.51    0.01 0.51 439 | pancake 38, large 77 | pancakes
`);
