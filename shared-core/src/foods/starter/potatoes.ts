import { readTable } from './table.ts';

/** Potatoes and other starchy roots. */
export const potatoes = readTable(`
NDB   | food                        | state           | kcal    P     C    F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
11352 | Potato, raw                 | raw, complex    |   77 2.05 17.49 0.09   2.1   0.82 0.03 0.03 0.01       0  0.1   6 | medium 213, small 170, large 369 | raw potato, raw potatoes
11674 | Potato, baked in skin       | cooked, complex |   93  2.5 21.15 0.13   2.2   1.18 0.03 0.04 0.01       0 0.12  10 | medium 173, small 138, large 299 | potato, potatoes, baked potato, jacket potato
11365 | Potato, boiled in skin      | cooked, complex |   87 1.87 20.13  0.1   1.8   0.91 0.03 0.03 0.01       0 0.11   4 | potato 136 | new potatoes
11367 | Potato, boiled without skin | cooked, complex |   86 1.71 20.01  0.1   1.8   0.89 0.03 0.03 0.01       0  0.1   5 | medium 167, small 125, large 300 | boiled potato, boiled potatoes
11657 | Mashed potatoes with milk   | cooked, complex |   83 1.91 17.57 0.57   1.5   1.48  0.3 0.05 0.02       0 0.13 302 | cup 210 | mash, mashed potato, mashed potatoes
11507 | Sweet potato, raw           | raw, complex    |   86 1.57 20.12 0.05     3   4.18 0.02 0.01    0       0 0.09  55 | medium 130, cup 133 | raw sweet potato
11508 | Sweet potato, baked         | cooked, complex |   90 2.01 20.71 0.15   3.3   6.48 0.05 0.09 0.01       0 0.12  36 | medium 114, small 60, large 180, cup 200 | sweet potato, sweet potatoes, baked sweet potato
11510 | Sweet potato, boiled        | cooked, complex |   76 1.37 17.72 0.14   2.5   5.74 0.03 0.06    0       0 0.08  27 | medium 151, cup 328 | boiled sweet potato
11168 | Sweet corn, boiled          | cooked, complex |   96 3.41 20.98  1.5   2.4   4.54  0.2 0.59 0.02       0 0.36   1 | ear 103, cup 149 | corn, sweetcorn
`);
