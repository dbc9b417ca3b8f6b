import { readTable } from './table.ts';

/** Grains, pasta and flours, dry and cooked. */
export const grains = readTable(`
NDB   | food                       | state           | kcal     P     C    F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
08120 | Oats, rolled               | dry, complex    |  379 13.15  67.7 6.52  10.1   0.99 1.11  2.2  0.1       0 0.98   6 | cup 81 | oats, oat, oatmeal, rolled oats, dry oats, porridge oats
08121 | Oatmeal, cooked with water | cooked, complex |   71  2.54    12 1.52   1.7   0.27 0.31 0.54 0.02       0 0.22   4 | cup 234 | porridge, cooked oats, cooked oatmeal
20033 | Oat bran                   | dry, complex    |  246  17.3 66.22 7.03  15.4   1.45 1.33 2.65 0.12       0 1.37   4 | cup 94 | dry oat bran
20036 | Brown rice, dry            | dry, complex    |  367  7.54 76.25  3.2   3.6   0.66 0.59 0.97 0.03       0 0.66   5 | cup 185 | dry brown rice, uncooked brown rice, raw brown rice
20037 | Brown rice, cooked         | cooked, complex |  123  2.74 25.58 0.97   1.6   0.24 0.26 0.36 0.01       0 0.21   4 | cup 202 | brown rice
20444 | White rice, dry            | dry, quick      |  365  7.13 79.95 0.66   1.3   0.12 0.18 0.15 0.03       0 0.59   5 | cup 185 | dry rice, uncooked rice, dry basmati, dry jasmine rice, raw rice, raw white rice
20445 | White rice, cooked         | cooked, quick   |  130  2.69 28.17 0.28   0.4   0.05 0.08 0.06 0.01       0 0.22   1 | cup 158 | rice, white rice, basmati, jasmine rice, boiled rice, steamed rice
20035 | Quinoa, dry                | dry, complex    |  368 14.12 64.16 6.07     7      - 0.71 2.98 0.26    0.05 0.84   5 | cup 170 | dry quinoa, uncooked quinoa
20137 | Quinoa, cooked             | cooked, complex |  120   4.4  21.3 1.92   2.8   0.87 0.23 0.97 0.09    0.02 0.26   7 | cup 185 | quinoa
20120 | Pasta, dry                 | dry, complex    |  371 13.04 74.67 1.51   3.2   2.67 0.28 0.54 0.02       0 0.99   6 | cup 95 | dry pasta, uncooked pasta, dry spaghetti, raw pasta
20121 | Pasta, cooked              | cooked, complex |  158   5.8 30.86 0.93   1.8   0.56 0.18  0.3 0.02       0 0.43   1 | cup 107 | pasta, spaghetti, macaroni, noodles, boiled pasta
20124 | Whole-wheat pasta, dry     | dry, complex    |  352 13.87 73.37 2.93   9.2   2.74 0.43 1.06 0.07       0    -   6 | cup 95 | dry whole-wheat pasta
20125 | Whole-wheat pasta, cooked  | cooked, complex |  149  5.99 30.07 1.71   3.9   0.75 0.24 0.54 0.04       0 0.41   4 | cup 97 | whole-wheat pasta, wholemeal pasta
20133 | Rice noodles, dry          | dry, quick      |  364  5.95 80.18 0.56   1.6   0.12 0.15 0.12 0.03       0 0.49 182 | | dry rice noodles
20134 | Rice noodles, cooked       | cooked, quick   |  108  1.79 24.01  0.2     1   0.03 0.02 0.02    0       0 0.15  19 | cup 176 | rice noodles
20028 | Couscous, dry              | dry, complex    |  376 12.76 77.43 0.64     5      - 0.12 0.24 0.01       - 0.87  10 | cup 173 | dry couscous
20029 | Couscous, cooked           | cooked, complex |  112  3.79 23.22 0.16   1.4    0.1 0.03 0.06    0       0 0.26   5 | cup 157 | couscous
20012 | Bulgur, dry                | dry, complex    |  342 12.29 75.87 1.33  12.5   0.41 0.23 0.52 0.02       0 0.83  17 | cup 140 | dry bulgur
20013 | Bulgur, cooked             | cooked, complex |   83  3.08 18.58 0.24   4.5    0.1 0.04 0.09    0       0 0.21   5 | cup 182 | bulgur, bulgur wheat
20005 | Pearl barley, dry          | dry, complex    |  352  9.91 77.72 1.16  15.6    0.8 0.24 0.51 0.06       0 0.67   9 | cup 200 | dry barley
20006 | Pearl barley, cooked       | cooked, complex |  123  2.26 28.22 0.44   3.8   0.28 0.09 0.19 0.02       0 0.15   3 | cup 157 | barley
20009 | Buckwheat, dry             | dry, complex    |  346 11.73 74.95 2.71  10.3      - 0.59 0.77 0.06       0 0.74  11 | cup 164 | dry buckwheat, buckwheat groats, kasha
20010 | Buckwheat, cooked          | cooked, complex |   92  3.38 19.94 0.62   2.7    0.9 0.13 0.17 0.01       0 0.21   4 | cup 168 | buckwheat
20020 | Cornmeal, whole-grain      | dry, complex    |  362  8.12 76.89 3.59   7.3   0.64 0.51 1.59 0.05       0    1  35 | cup 122 | polenta, cornmeal
20061 | Rice flour                 | dry, quick      |  366  5.95 80.13 1.42   2.4   0.12 0.39 0.31 0.07       0 0.49   0 | cup 158 | ground rice, rice cereal
20481 | Wheat flour, white         | dry, complex    |  364 10.33 76.31 0.98   2.7   0.27 0.16 0.39 0.02       0 0.71   2 | cup 125 | flour, white flour, plain flour
20080 | Wheat flour, whole-grain   | dry, complex    |  340 13.21 71.97  2.5  10.7   0.41 0.43 1.09 0.07       0  0.9   2 | cup 120 | wholemeal flour, whole-wheat flour
08156 | Puffed rice                | as eaten, quick |  402   6.3  89.8  0.5   1.7      - 0.13    -    -       - 0.53   3 | cup 14 | puffed rice cereal
`);
