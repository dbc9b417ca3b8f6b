import { readTable } from './table.ts';

/** Beans, lentils, soy. */
export const legumes = readTable(`
NDB   | food                         | state             | kcal     P     C    F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
16069 | Lentils, dry                 | dry, complex      |  352 24.63 63.35 1.06  10.7   2.03 0.15 0.41 0.11       0 1.79   6 | cup 192, tbsp 12 | dry lentils
16070 | Lentils, cooked              | cooked, complex   |  116  9.02 20.13 0.38   7.9    1.8 0.05 0.14 0.04       0 0.65   2 | cup 198, tbsp 12.3 | lentils
16014 | Black beans, dry             | dry, complex      |  341  21.6 62.36 1.42  15.5   2.12 0.37 0.33 0.28       0 1.73   5 | cup 194, tbsp 12.1 | dry black beans
16015 | Black beans, cooked          | cooked, complex   |  132  8.86 23.71 0.54   8.7   0.32 0.14 0.13 0.11       0 0.71   1 | cup 172 | black beans
16056 | Chickpeas, dry               | dry, complex      |  378 20.47 62.95 6.04  12.2   10.7  0.6 2.63  0.1       0 1.47  24 | cup 200, tbsp 12.5 | dry chickpeas
16057 | Chickpeas, cooked            | cooked, complex   |  164  8.86 27.42 2.59   7.6    4.8 0.27 1.11 0.04       0 0.63   7 | cup 164 | chickpeas, garbanzos, garbanzo beans
16359 | Chickpeas, canned, rinsed    | canned, complex   |  138  7.04 22.87 2.47   6.3      4 0.21 0.93 0.04       0  0.5 212 | can 254, cup 152 | canned chickpeas, tinned chickpeas
16032 | Kidney beans, dry            | dry, complex      |  337 22.53 61.29 1.06  15.2    2.1 0.15 0.23 0.36       0  1.8  12 | cup 184, tbsp 12.2 | dry kidney beans
16033 | Kidney beans, cooked         | cooked, complex   |  127  8.67  22.8  0.5   7.4   0.32 0.07 0.11 0.17       0 0.69   2 | cup 177, tbsp 11 | kidney beans, beans
16335 | Kidney beans, canned, rinsed | canned, complex   |  121  8.12  20.8 0.93     6      - 0.33 0.22 0.13       0 0.69 208 | cup 158 | canned kidney beans, tinned kidney beans
16043 | Pinto beans, cooked          | cooked, complex   |  143  9.01 26.22 0.65     9   0.34 0.14  0.1 0.14       0 0.77   1 | cup 171, tbsp 10.6 | pinto beans
11212 | Edamame, cooked              | cooked, complex   |  121 11.91  8.91  5.2   5.2   2.18 0.62 1.79 0.36       0 0.75   6 | cup 155 | edamame, soybeans
16426 | Tofu, firm                   | as eaten          |  144 17.27  2.78 8.72   2.3      - 1.26 4.34 0.58       - 1.39  14 | block 324, cup 252 | firm tofu, tofu
16427 | Tofu, regular                | as eaten          |   76  8.08  1.87 4.78   0.3   0.62 0.69 2.38 0.32       0 0.71   7 | block 464, cup 248 | regular tofu
16114 | Tempeh                       | as eaten          |  192 20.29  7.64 10.8     -      - 2.54 4.05 0.25       - 1.43   9 | cup 166 | tempe
16158 | Hummus                       | as eaten, complex |  166   7.9 14.29  9.6     6      - 1.44    -    -       -    - 379 | tbsp 15, cup 246 | houmous
16222 | Soy milk, unsweetened        | as eaten          |   33  2.86  1.74 1.61   0.5   0.41 0.21    -    -       -    -  37 | cup 243 | soy milk, soya milk
`);
