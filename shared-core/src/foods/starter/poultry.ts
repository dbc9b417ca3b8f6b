import { readTable } from './table.ts';

/** Chicken and turkey. */
export const poultry = readTable(`
NDB   | food                                 | state    | kcal     P    C     F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
05062 | Chicken breast, raw                  | raw      |  120  22.5    0  2.62     0      0 0.56 0.32 0.01    0.01 1.86  45 | piece 272 | raw chicken, raw chicken breast, uncooked chicken, uncooked chicken breast
05064 | Chicken breast, roasted              | cooked   |  165 31.02    0  3.57     0      0 1.01 0.59 0.03    0.03 2.33  74 | half breast 86, cup 140 | chicken, chicken breast, roast chicken, cooked chicken, cooked chicken breast
05747 | Chicken breast, grilled              | cooked   |  151 30.54    0  3.17     0      0 0.99 0.58 0.02    0.01 2.53  52 | piece 196 | grilled chicken
05096 | Chicken thigh, skinless, raw         | raw      |  121 19.66    0  4.12     0      0  1.1 0.74 0.03    0.01 1.68  95 | thigh 149 | raw chicken thigh
05098 | Chicken thigh, skinless, roasted     | cooked   |  179 24.76    0  8.15     0      0 2.31 1.44 0.06    0.01 2.11 106 | thigh 116 | chicken thigh, chicken thighs
05073 | Chicken drumstick, skinless, roasted | cooked   |  155 24.24    0   5.7     0      0 1.51 0.97 0.04    0.01 2.07 128 | drumstick 96 | drumstick, drumsticks
05333 | Ground chicken, cooked               | cooked   |  189 23.28    0 10.92     0      0 3.11 1.79 0.08    0.04 1.82  75 | | ground chicken, chicken mince
05277 | Chicken, canned in broth             | canned   |  165 21.77    0  7.95     0      0  2.2 1.51 0.07    0.03 1.58 503 | can 142 | canned chicken, tinned chicken
05710 | Turkey breast, raw                   | raw      |  114 23.34    0  2.33     0      0 0.34 0.26 0.02       0 1.93  74 | | raw turkey, raw turkey breast
05711 | Turkey breast, roasted               | cooked   |  136 29.51    0  1.97     0      0 0.66 0.54 0.03    0.01 2.44 114 | | turkey, turkey breast, roast turkey, cooked turkey, cooked turkey breast
05665 | Ground turkey 93/7, raw              | raw      |  150 18.73    0  8.34     0      0 2.17 2.19 0.12    0.01 1.55  69 | | raw ground turkey, raw turkey mince
05666 | Ground turkey 93/7, cooked           | cooked   |  213  27.1    0  11.6     0      0 2.97 3.05 0.18    0.02 2.24  90 | | ground turkey, turkey mince
07081 | Turkey breast slices                 | as eaten |  100 16.33 2.34  2.37     0   3.28 0.32 0.23 0.01       0 1.35 922 | slice 15 | sliced turkey, deli turkey, turkey ham
`);
