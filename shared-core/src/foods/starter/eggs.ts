import { readTable } from './table.ts';

/** Eggs, whites, yolks and dry proteins. */
export const eggs = readTable(`
NDB   | food                    | state  | kcal     P    C     F fibre sugars  sat   LA  ALA EPA+DHA  Leu   Na | portions, g | also called
01123 | Egg, whole              | raw    |  143 12.56 0.72  9.51     0   0.37 3.13 1.53 0.04    0.06 1.09  142 | large 50, small 38, medium 44, extra large 56, jumbo 63, cup 243 | egg, eggs, whole egg, whole eggs, raw egg
01124 | Egg white               | raw    |   52  10.9 0.73  0.17     0   0.71    0    0    0       0 1.02  166 | large 33, cup 243 | whites, egg whites, raw egg white
01125 | Egg yolk                | raw    |  322 15.86 3.59 26.54     0   0.56 9.55 3.54  0.1    0.13  1.4   48 | large 17, cup 243 | yolk, yolks, egg yolks
01172 | Egg whites, pasteurized | raw    |   48  10.2 1.04     0     0   0.25    0    0    0       0 0.94  169 | | carton egg whites, liquid egg whites
01129 | Egg, boiled             | cooked |  155 12.58 1.12 10.61     0   1.12 3.27 1.19 0.04    0.04 1.08  124 | large 50, cup 136 | boiled egg, boiled eggs, hard-boiled egg
01131 | Egg, poached            | cooked |  143 12.51 0.71  9.47     0   0.37 3.11 1.55 0.05    0.06 1.08  297 | large 50 | poached egg, poached eggs
01132 | Eggs, scrambled         | cooked |  149  9.99 1.61 10.98     0   1.39 3.33 2.07 0.13    0.04 0.86  145 | large 61, cup 220 | scrambled egg, scrambled eggs
01128 | Egg, fried              | cooked |  196 13.61 0.83 14.84     0    0.4 4.32 2.78 0.14    0.06 1.18  207 | large 46 | fried egg, fried eggs
01173 | Egg white powder        | dry    |  382  81.1  7.8     0     0    5.4    0    0    0       0 6.84 1280 | | dried egg white, egg protein
14066 | Whey protein powder     | dry    |  352 78.13 6.25  1.56   3.1      0 0.78 0.26 0.03       0    -  156 | scoop 32 | whey, whey protein, protein powder, protein
16122 | Soy protein isolate     | dry    |  335 88.32    0  3.39     0      0 0.42 1.45  0.2       0 6.78 1005 | | soy protein
`);
