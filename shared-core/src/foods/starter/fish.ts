import { readTable } from './table.ts';

/** Fish and seafood. */
export const fish = readTable(`
NDB   | food                         | state    | kcal     P    C     F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
15236 | Salmon, farmed, raw          | raw      |  208 20.42    0 13.42     0      0 3.05  0.9 0.15    1.97 1.62  59 | half fillet 198 | raw salmon
15237 | Salmon, farmed, baked        | cooked   |  206  22.1    0 12.35     0      0  2.4 0.67 0.11    2.15  1.8  61 | half fillet 178 | salmon, baked salmon
15086 | Salmon, sockeye, baked       | cooked   |  156 26.48    0  5.57     0      0 0.97 0.19 0.06    0.86 2.19  92 | half fillet 155 | wild salmon, red salmon
15260 | Salmon, pink, canned         | canned   |  138  23.1    0  5.02     0      0  0.9 0.08 0.05    1.08 1.76 381 | can 315 | canned salmon, tinned salmon
15077 | Salmon, smoked               | as eaten |  117 18.28    0  4.32     0      0 0.93 0.47    0    0.45 1.49 672 | | smoked salmon, lox
15261 | Tilapia, raw                 | raw      |   96 20.08    0   1.7     0      0 0.59 0.16 0.03    0.09  1.6  52 | fillet 116 | raw tilapia
15262 | Tilapia, baked               | cooked   |  128 26.15    0  2.65     0      0 0.94 0.29 0.05    0.14 2.04  56 | fillet 87 | tilapia
15015 | Cod, raw                     | raw      |   82 17.81    0  0.67     0      0 0.13 0.01    0    0.18 1.45  54 | fillet 231 | raw cod
15016 | Cod, baked                   | cooked   |  105 22.83    0  0.86     0      0 0.17 0.01    0    0.16 1.86  78 | fillet 180 | cod
15034 | Haddock, baked               | cooked   |   90 19.99    0  0.55     0      0 0.11 0.02    0    0.16 1.88 261 | fillet 150 | haddock
15037 | Halibut, baked               | cooked   |  111 22.54    0  1.61     0      0 0.35 0.04 0.01    0.24 2.06  82 | half fillet 159 | halibut
15241 | Trout, baked                 | cooked   |  168  23.8    0  7.38     0      0 1.65 0.59 0.08    0.88 2.03  61 | fillet 71 | trout
15121 | Tuna, light, canned in water | canned   |   86 19.44    0  0.96     0      0 0.21 0.01    0    0.22 1.51 247 | can 165, cup 154 | tuna, canned tuna, tinned tuna
15126 | Tuna, white, canned in water | canned   |  128 23.62    0  2.97     0      0 0.79 0.06 0.07    0.86 1.92 377 | can 172 | albacore, white tuna
15119 | Tuna, light, canned in oil   | canned   |  198 29.13    0  8.21     0      0 1.53 2.68 0.07    0.13 2.37 416 | can 171, cup 146 | tuna in oil
15221 | Tuna, yellowfin, baked       | cooked   |  130 29.15    0  0.59     0      0 0.21 0.02    0    0.12 2.27  54 | | tuna steak, fresh tuna
15088 | Sardines, canned in oil      | canned   |  208 24.62    0 11.45     0      0 1.53 3.54  0.5    0.98    2 307 | sardine 12, can 92, cup 149 | sardine, sardines
15047 | Mackerel, baked              | cooked   |  262 23.85    0 17.81     0      - 4.18 0.15 0.11     1.2 1.94  83 | fillet 88 | mackerel
15149 | Shrimp, raw                  | raw      |   71 13.61 0.91  1.01     0      0 0.26 0.09 0.01    0.14 1.17 566 | large 7, medium 6, small 5 | raw shrimp, raw prawns
15151 | Shrimp, cooked               | cooked   |  119 22.78 1.52   1.7     0      0 0.52 0.19 0.01    0.28 1.95 947 | large 5.5 | shrimp, prawn, prawns
90240 | Scallops, steamed            | cooked   |  111 20.54 5.41  0.84     0      0 0.22 0.01 0.01    0.18 1.23 667 | | scallop, scallops
`);
