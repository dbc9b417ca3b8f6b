import { readTable } from './table.ts';

/**
 * Sugars and sweets. Dextrose is not in the USDA tables: the powder sold is the monohydrate, 180.16 / 198.17 = 90.9 %
 * glucose by mass, at the general 4 kcal/g.
 */
export const sugars = readTable(`
NDB   | food                      | state           | kcal    P     C    F fibre sugars  sat   LA ALA EPA+DHA  Leu Na | portions, g | also called
19335 | Sugar                     | as eaten, quick |  387    0 99.98    0     0   99.8    0    0   0       0    -  1 | tsp 4.2, cup 200 | white sugar, table sugar, sucrose
19334 | Brown sugar               | as eaten, quick |  380 0.12 98.09    0     0  97.02    0    0   0       0    - 28 | tsp 4.6, cup 220 | cane sugar
-     | Dextrose powder           | as eaten, quick |  364    0  90.9    0     0   90.9    0    0   0       0    0  0 | | dextrose, glucose
19296 | Honey                     | as eaten, quick |  304  0.3  82.4    0   0.2  82.12    0    0   0       0 0.01  4 | tbsp 21, cup 339 | runny honey
19353 | Maple syrup               | as eaten, quick |  260 0.04 67.04 0.06     0  60.46 0.01 0.02   0       0    - 12 | tbsp 20, cup 315 | syrup
19297 | Jam                       | as eaten, quick |  278 0.37 68.86 0.07   1.1   48.5 0.01    0   0       0 0.04 32 | tbsp 20 | jelly, preserves, marmalade
19108 | Jelly beans               | as eaten, quick |  375    0 93.55 0.05   0.2     70    0    0   0       0    - 50 | | sweets, candy, jellybeans
19116 | Marshmallows              | as eaten, quick |  318  1.8  81.3  0.2   0.1  57.56 0.06 0.05   0       0 0.07 80 | marshmallow 7.2 | marshmallow
14148 | Cola                      | as eaten, quick |   42    0 10.36 0.25     0   9.94    0    0   0       0    -  3 | fl oz 30.7, can 370 | soda, soft drink
19165 | Cocoa powder, unsweetened | as eaten        |  228 19.6  57.9 13.7    37   1.75 8.07 0.44   0       0 1.19 21 | tbsp 5.4, cup 86 | cocoa, cacao
`);
