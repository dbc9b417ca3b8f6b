import { readTable } from './table.ts';

/** Beef, pork, lamb, game. */
export const meat = readTable(`
NDB   | food                           | state    | kcal     P    C     F fibre sugars   sat   LA  ALA EPA+DHA  Leu   Na | portions, g | also called
23557 | Ground beef 95/5, raw          | raw      |  137 21.41    0     5     0      0  2.18 0.19 0.03       0 1.67   66 | | raw ground beef 95, raw beef mince 5 %
23558 | Ground beef 95/5, cooked       | cooked   |  174 26.29    0   6.8     0      0  2.98 0.23 0.04       0 2.05   65 | | ground beef, lean ground beef, beef mince, minced beef, mince, beef mince 5 %
23472 | Ground beef 93/7, raw          | raw      |  152 20.85    0     7     0      0  2.88 0.22 0.03       0 1.63   66 | | raw ground beef 93, raw beef mince 7 %
23473 | Ground beef 93/7, cooked       | cooked   |  193 26.22    0  8.94     0      0  3.68 0.27 0.04       0 2.04   66 | | ground beef 93, beef mince 7 %
23562 | Ground beef 90/10, raw         | raw      |  176    20    0    10     0      0  3.93 0.26 0.04       0 1.56   66 | | raw ground beef 90, raw beef mince 10 %
23565 | Ground beef 90/10, cooked      | cooked   |  230 28.45    0 12.04     0      0  4.71 0.32 0.01       0 2.22   87 | | ground beef 90, beef mince 10 %
23572 | Ground beef 80/20, raw         | raw      |  254 17.17    0    20     0      0  7.58 0.42 0.05       0 1.34   66 | | raw ground beef 80, raw beef mince 20 %
23575 | Ground beef 80/20, cooked      | cooked   |  272    27    0 17.36     0      0  6.55 0.42 0.01       0 2.11   91 | | ground beef 80, beef mince 20 %
23611 | Sirloin steak, lean, raw       | raw      |  131 22.09    0  4.08     0      0  1.51 0.14 0.01       0 1.76   56 | | raw steak, raw sirloin
13454 | Sirloin steak, lean, broiled   | cooked   |  183 30.55    0  5.79     0      0  2.21 0.17 0.02       0 2.43   64 | | steak, beef, sirloin, beef steak, rump steak
23654 | Flank steak, lean, broiled     | cooked   |  186 27.89    0   7.4     0      0  3.07 0.18 0.07       0 2.22   57 | steak 383 | flank, flank steak
13442 | Beef tenderloin, lean, grilled | cooked   |  198  30.7    0  8.32     0      0   3.3 0.38 0.02    0.01 2.68   59 | steak 119 | fillet steak, filet steak, beef fillet
13418 | Eye of round, lean, roasted    | cooked   |  163 29.85    0   3.9     0      0  1.38 0.17 0.01    0.01 2.89   67 | | roast beef, silverside
23174 | Ribeye steak, lean, grilled    | cooked   |  206 28.11    0 10.37     0      0   4.2  0.4 0.02       0 2.64   59 | | ribeye, rib eye
19002 | Beef jerky                     | as eaten |  410  33.2   11  25.6   1.8      9 10.85 0.81 0.19       0    - 2081 | piece 20 | jerky
10060 | Pork tenderloin, raw           | raw      |  109 20.95    0  2.17     0      0   0.7 0.29 0.01       0 1.78   53 | | raw pork, raw pork fillet
10061 | Pork tenderloin, roasted       | cooked   |  143 26.17    0  3.51     0      0   1.2 0.41 0.01       0 2.23   57 | | pork, pork fillet, cooked pork
10066 | Pork chop, lean, raw           | raw      |  127 22.41    0  3.42     0      0  1.21 0.29 0.01       0 1.91   49 | chop 185 | raw pork chop, raw pork loin
10068 | Pork chop, lean, broiled       | cooked   |  173 27.58    0  6.08     0      0  2.08 0.49 0.02       0 2.35   45 | chop 145 | pork chop, pork chops, pork loin
10976 | Ground pork 96/4, cooked       | cooked   |  187 30.55    0  7.15     0      0  1.95 0.65 0.03    0.01 2.44   84 | | ground pork, pork mince
10862 | Bacon, fried                   | cooked   |  468 33.92  1.7 35.09     0      0 11.96 5.25 0.22    0.01 2.81 1684 | slice 11.5 | bacon
07028 | Ham slices, lean               | as eaten |  100  16.9 0.55   3.4     0      0  0.66 0.18 0.01       0 1.39 1279 | slice 23 | ham, deli ham
17014 | Leg of lamb, lean, roasted     | cooked   |  191  28.3    0  7.74     0      0  2.76 0.41 0.05       0  2.2   68 | | lamb, roast lamb
17148 | Ground bison, cooked           | cooked   |  179 25.45    0  8.62     0      0  3.49 0.31 0.05       0 2.18   76 | | bison
17165 | Venison, roasted               | cooked   |  158 30.21    0  3.19     0      -  1.25  0.4 0.09       - 2.57   54 | | venison, deer
`);
