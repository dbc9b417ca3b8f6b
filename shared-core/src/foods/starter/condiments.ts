import { readTable } from './table.ts';

/** Condiments and drinks. */
export const condiments = readTable(`
NDB   | food                     | state    | kcal    P     C    F fibre sugars  sat   LA  ALA EPA+DHA  Leu    Na alcohol | portions, g | also called
16123 | Soy sauce                | as eaten |   53 8.14  4.93 0.57   0.8    0.4 0.07 0.23 0.03       0 0.54  5493         | tbsp 16, tsp 5.3, cup 255 | shoyu
02046 | Mustard                  | as eaten |   60 3.74  5.83 3.34     4   0.92 0.21 0.36 0.37       0 0.29  1104         | tsp 5, cup 249 | yellow mustard
11935 | Ketchup                  | as eaten |  101 1.04  27.4  0.1   0.3  21.27 0.01 0.04    0       0 0.02   907         | tbsp 17, cup 240 | tomato ketchup, catsup
06164 | Salsa                    | as eaten |   29 1.52  6.64 0.17   1.9   4.01 0.02 0.07    0       0    -   711         | tbsp 18, cup 259 | tomato salsa
06931 | Marinara sauce           | as eaten |   50 1.39  7.43 1.61   1.8   4.91 0.22 0.58 0.08       0    -   437         | half cup 132 | pasta sauce, tomato sauce
06150 | Barbecue sauce           | as eaten |  172 0.82 40.77 0.63   0.9  33.24 0.05 0.08 0.02       0    -  1027         | tbsp 17, cup 279 | bbq sauce
06168 | Hot sauce                | as eaten |   11 0.51  1.75 0.37   0.3   1.26 0.05  0.2    0       - 0.03  2643         | tsp 4.7 | chili sauce, pepper sauce
02069 | Balsamic vinegar         | as eaten |   88 0.49 17.03    0     -  14.95    0    -    -       -    -    23         | tbsp 16, tsp 5.3, cup 255 | vinegar, balsamic
02047 | Salt                     | as eaten |    0    0     0    0     0      0    0    0    0       0    0 38758         | tsp 6, tbsp 18 | table salt
06194 | Chicken broth            | as eaten |    6 0.64  0.44 0.21     0   0.43 0.01 0.01    0       0    -   371         | cup 249 | broth, stock, bouillon
14091 | Almond milk, unsweetened | as eaten |   15 0.59  0.58  1.1     0      0    0 0.24    0       0    -    71         | cup 262 | almond milk
14209 | Coffee, black            | as eaten |    1 0.12     0 0.02     0      0    0    0    0       0 0.01     2         | cup 237, fl oz 29.6 | coffee
14003 | Beer                     | as eaten |   43 0.46  3.55    0     0      0    0    0    0       0    0     4     3.9 | can 356, fl oz 29.7 | lager
14096 | Wine, red                | as eaten |   85 0.07  2.61    0     0   0.62    0    0    0       0    -     4    10.6 | glass 147, fl oz 29.4 | wine, red wine
14037 | Spirits, 40 %            | as eaten |  231    0     0    0     0      0    0    0    0       0    0     1    33.4 | fl oz 27.8 | vodka, whisky, whiskey, rum, gin
`);
