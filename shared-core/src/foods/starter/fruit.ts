import { readTable } from './table.ts';

/** Fruit, dried fruit, juice. */
export const fruit = readTable(`
NDB   | food                    | state           | kcal    P     C     F fibre sugars  sat   LA  ALA EPA+DHA  Leu Na | portions, g | also called
09040 | Banana                  | raw, quick      |   89 1.09 22.84  0.33   2.6  12.23 0.11 0.05 0.03       0 0.07  1 | medium 118, small 101, large 136, cup 150 | bananas
09003 | Apple                   | raw             |   52 0.26 13.81  0.17   2.4  10.39 0.03 0.04 0.01       0 0.01  1 | medium 182, small 149, large 223, cup 125 | apples
09200 | Orange                  | raw             |   47 0.94 11.75  0.12   2.4   9.35 0.02 0.02 0.01       0 0.02  0 | medium 131, small 96, large 184, cup 180 | oranges
09112 | Grapefruit              | raw             |   42 0.77 10.66  0.14   1.6   6.89 0.02 0.03 0.01       0 0.02  0 | half 123, cup 230 | pink grapefruit
09252 | Pear                    | raw             |   57 0.36 15.23  0.14   3.1   9.75 0.02 0.09    0       0 0.02  1 | medium 178, small 148, large 230 | pears
09236 | Peach                   | raw             |   39 0.91  9.54  0.25   1.5   8.39 0.02 0.08    0       0 0.03  0 | medium 150, small 130, large 175, cup 154 | peaches
09148 | Kiwi                    | raw             |   61 1.14 14.66  0.52     3   8.99 0.03 0.25 0.04       0 0.07  3 | fruit 69, cup 180 | kiwis, kiwifruit
09176 | Mango                   | raw, quick      |   60 0.82 14.98  0.38   1.6  13.66 0.09 0.02 0.05       0 0.05  1 | fruit 336, cup 165 | mangoes
09266 | Pineapple               | raw, quick      |   50 0.54 13.12  0.12   1.4   9.85 0.01 0.02 0.02       0 0.02  1 | slice 84, cup 165 | ananas
09326 | Watermelon              | raw, quick      |   30 0.61  7.55  0.15   0.4    6.2 0.02 0.05    0       0 0.02  1 | wedge 286, cup 152 | water melon
09181 | Cantaloupe              | raw, quick      |   34 0.84  8.16  0.19   0.9   7.86 0.05 0.04 0.05       0 0.03 16 | wedge 69, cup 160 | melon
09132 | Grapes                  | raw, quick      |   69 0.72  18.1  0.16   0.9  15.48 0.05 0.04 0.01       0 0.02  2 | grape 4.9, cup 151 | grape
09070 | Cherries                | raw             |   63 1.06 16.01   0.2   2.1  12.82 0.04 0.03 0.03       0 0.03  0 | cherry 8.2, cup 154 | cherry
09050 | Blueberries             | raw             |   57 0.74 14.49  0.33   2.4   9.96 0.03 0.09 0.06       0 0.04  1 | cup 148 | blueberry, berries
09316 | Strawberries            | raw             |   32 0.67  7.68   0.3     2   4.89 0.02 0.09 0.07       0 0.03  1 | medium 12, large 18, cup 144 | strawberry
09302 | Raspberries             | raw             |   52  1.2 11.94  0.65   6.5   4.42 0.02 0.25 0.13       0    -  1 | cup 123 | raspberry
09037 | Avocado                 | raw             |  160    2  8.53 14.66   6.7   0.66 2.13 1.67 0.11       0 0.14  7 | fruit 201, cup 150 | avocados
09298 | Raisins                 | as eaten, quick |  299 3.07 79.18  0.46   3.7  59.19 0.06 0.03 0.01       0  0.1 11 | cup 145 | raisin
09421 | Dates, dried            | as eaten, quick |  277 1.81 74.97  0.15   6.7  66.47    -    -    -       - 0.08  1 | date 24 | date, dates
09032 | Apricots, dried         | as eaten, quick |  241 3.39 62.64  0.51   7.3  53.44 0.02 0.07    0       0 0.11 10 | half 3.5, cup 130 | dried apricots
09291 | Prunes                  | as eaten, quick |  240 2.18 63.88  0.38   7.1  38.13 0.09 0.04 0.02       0 0.07  2 | prune 9.5, cup 174 | prune, dried plums
09019 | Applesauce, unsweetened | canned, quick   |   42 0.17 11.27   0.1   1.1   9.39 0.01 0.01    0       0 0.01  2 | cup 244 | applesauce, apple sauce
09206 | Orange juice            | raw, quick      |   45  0.7  10.4   0.2   0.2    8.4 0.02 0.03 0.01       0 0.01  1 | cup 248, fl oz 31 | oj
09016 | Apple juice             | as eaten, quick |   46  0.1  11.3  0.13   0.2   9.62 0.02 0.03 0.01       0    -  4 | cup 248, fl oz 31 | clear apple juice
`);
