import { readTable } from './table.ts';

/** Milk, yogurt, cheese. */
export const dairy = readTable(`
NDB   | food                      | state           | kcal     P     C     F fibre sugars   sat   LA  ALA EPA+DHA  Leu   Na | portions, g | also called
01077 | Milk, whole               | as eaten        |   61  3.15   4.8  3.25     0   5.05  1.87 0.12 0.08       0  0.3   43 | cup 244, tbsp 15, fl oz 30.5 | milk, whole milk
01079 | Milk, 2 %                 | as eaten        |   50   3.3   4.8  1.98     0   5.06  1.26 0.06 0.01       0 0.31   47 | cup 244, fl oz 30.5 | semi-skimmed milk, reduced-fat milk, milk 2%
01082 | Milk, 1 %                 | as eaten        |   42  3.37  4.99  0.97     0    5.2  0.63 0.03    0       0 0.32   44 | cup 244, fl oz 30.5 | low-fat milk, milk 1%
01085 | Milk, skim                | as eaten        |   34  3.37  4.96  0.08     0   5.09  0.06    0    0       0 0.32   42 | cup 245, fl oz 30.6 | skim milk, skimmed milk, nonfat milk
01104 | Chocolate milk, low-fat   | as eaten, quick |   62  3.46  9.86     1   0.1   9.94  0.58 0.03 0.01       0 0.31   65 | cup 250 | chocolate milk
01154 | Milk powder, nonfat       | dry             |  362 36.16 51.98  0.77     0  51.98   0.5 0.02 0.01       0 3.54  535 | cup 120 | skim milk powder, dry milk
01012 | Cottage cheese, creamed   | as eaten        |   98 11.12  3.38   4.3     0   2.67  1.72 0.11 0.02       0 1.12  364 | cup 225 | full-fat cottage cheese
01015 | Cottage cheese, 2 %       | as eaten        |   81 10.45  4.76  2.27     0      4  1.24 0.05 0.01       0 1.05  308 | cup 226 | cottage cheese
01016 | Cottage cheese, 1 %       | as eaten        |   72 12.39  2.72  1.02     0   2.72  0.65 0.02 0.01       0 1.27  406 | cup 226 | low-fat cottage cheese
01256 | Greek yogurt, nonfat      | as eaten        |   59 10.19   3.6  0.39     0   3.24  0.12 0.01    0       0    -   36 | container 170 | greek yogurt, greek yoghurt, fat-free greek yogurt
01287 | Greek yogurt, low-fat     | as eaten        |   73  9.95  3.94  1.92     0   3.56  1.23 0.05 0.01       0 0.53   34 | container 200 | low-fat greek yoghurt
01293 | Greek yogurt, whole milk  | as eaten        |   97     9  3.98     5     0      4   2.4 0.21 0.02       0    -   35 | | full-fat greek yogurt, full-fat greek yoghurt
01118 | Yogurt, plain, skim       | as eaten        |   56  5.73  7.68  0.18     0   7.68  0.12    0    0       0 0.58   77 | cup 245, container 170 | skim yogurt, nonfat yogurt
01117 | Yogurt, plain, low-fat    | as eaten        |   63  5.25  7.04  1.55     0   7.04     1 0.03 0.01       0 0.53   70 | cup 245, container 170 | yogurt, yoghurt, low-fat yogurt
01116 | Yogurt, plain, whole milk | as eaten        |   61  3.47  4.66  3.25     0   4.66   2.1 0.07 0.03       0 0.35   46 | cup 245, container 170 | full-fat yogurt
01009 | Cheddar                   | as eaten        |  404 22.87  3.09 33.31     0   0.48 18.87 1.17 0.11    0.01 1.94  653 | slice 28, cup 113 | cheese, cheddar cheese
01028 | Mozzarella, part-skim     | as eaten        |  254 24.26  2.77 15.92     0   1.13 10.11 0.34 0.14       0 2.37  619 | | mozzarella
01033 | Parmesan                  | as eaten        |  392 35.75  3.22 25.83     0    0.8 16.41 0.27  0.3       0 3.45 1376 | | parmesan cheese
01040 | Swiss cheese              | as eaten        |  393 26.96  1.44 30.99     0      0 18.23 0.73 0.13       0 2.96  187 | slice 28, cup 108 | emmental
01019 | Feta                      | as eaten        |  264 14.21  4.09 21.28     0   4.09 14.95 0.33 0.27       0  1.4  917 | cup 150, wedge 38 | feta cheese
01037 | Ricotta, part-skim        | as eaten        |  138 11.39  5.14  7.91     0   0.31  4.93 0.19 0.07       0 1.24   99 | cup 246 | ricotta
01017 | Cream cheese              | as eaten        |  350  6.15  5.52 34.44     0   3.76 20.21 0.81 0.13    0.01 0.66  314 | tbsp 14.5, cup 232 | soft cheese
01056 | Sour cream                | as eaten        |  198  2.44  4.63 19.35     0   3.41 10.14 0.44 0.07    0.01 0.32   31 | tbsp 12, cup 230 | soured cream
01053 | Cream, heavy              | as eaten        |  340  2.84  2.74 36.08     0   2.92 23.03 0.87 0.12    0.01 0.23   27 | | cream, whipping cream, double cream
`);
