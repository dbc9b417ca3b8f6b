import { readTable } from './table.ts';

/** Vegetables. */
export const vegetables = readTable(`
NDB   | food                     | state           | kcal    P     C    F fibre sugars  sat   LA  ALA EPA+DHA  Leu  Na | portions, g | also called
11090 | Broccoli, raw            | raw             |   34 2.82  6.64 0.37   2.6    1.7 0.04 0.02 0.02       0 0.13  33 | cup 91, spear 31 | raw broccoli
11091 | Broccoli, boiled         | cooked          |   35 2.38  7.18 0.41   3.3   1.39 0.08 0.05 0.12       0 0.15  41 | cup 156, spear 37 | broccoli, steamed broccoli
11457 | Spinach, raw             | raw             |   23 2.86  3.63 0.39   2.2   0.42 0.06 0.03 0.14       0 0.22  79 | cup 30, leaf 10 | spinach, baby spinach
11458 | Spinach, boiled          | cooked          |   23 2.97  3.75 0.26   2.4   0.43 0.04 0.02 0.09       0 0.23  70 | cup 180 | cooked spinach
11012 | Asparagus, boiled        | cooked          |   22  2.4  4.11 0.22     2    1.3 0.05 0.08 0.03       0 0.14  14 | spear 15, cup 180 | asparagus
11053 | Green beans, boiled      | cooked          |   35 1.89  7.88 0.28   3.2   3.63 0.06 0.06 0.09       0 0.12   1 | cup 125 | green beans, french beans
11099 | Brussels sprouts, boiled | cooked          |   36 2.55   7.1  0.5   2.6   1.74  0.1 0.08 0.17       0 0.11  21 | sprout 21, cup 156 | sprouts, brussels sprouts
11109 | Cabbage, raw             | raw             |   25 1.28   5.8  0.1   2.5    3.2 0.03 0.02    0       0 0.04  18 | cup 89, leaf 23 | cabbage
11124 | Carrots, raw             | raw             |   41 0.93  9.58 0.24   2.8   4.74 0.04 0.12    0       0  0.1  69 | medium 61, small 50, large 72, cup 128 | carrot, carrots
11125 | Carrots, boiled          | cooked          |   35 0.76  8.22 0.18     3   3.45 0.03 0.09    0       0 0.08  58 | carrot 46, cup 156 | cooked carrots
11136 | Cauliflower, boiled      | cooked          |   23 1.84  4.11 0.45   2.3   2.08 0.07 0.05 0.17       0 0.11  15 | cup 124 | cauliflower
11143 | Celery, raw              | raw             |   16 0.69  2.97 0.17   1.6   1.34 0.04 0.08    0       0 0.03  80 | stalk 40, cup 101 | celery
11205 | Cucumber, raw            | raw             |   15 0.65  3.63 0.11   0.5   1.67 0.04 0.03 0.01       0 0.03   2 | cucumber 301, cup 104 | cucumber
11215 | Garlic, raw              | raw             |  149 6.36 33.06  0.5   2.1      1 0.09 0.23 0.02       0 0.31  17 | clove 3, tsp 2.8 | garlic
11233 | Kale, raw                | raw             |   49 4.28  8.75 0.93   3.6   2.26 0.09 0.14 0.18       0    -  38 | cup 16 | kale
11251 | Lettuce, romaine         | raw             |   17 1.23  3.29  0.3   2.1   1.19 0.04 0.05 0.11       0 0.08   8 | cup 47, leaf 28 | lettuce, salad, cos lettuce
11260 | Mushrooms, raw           | raw             |   22 3.09  3.26 0.34     1   1.98 0.05 0.16    0       0 0.12   5 | medium 18, cup 96 | mushroom, mushrooms
11282 | Onion, raw               | raw             |   40  1.1  9.34  0.1   1.7   4.24 0.04 0.01    0       0 0.03   4 | medium 110, small 70, large 150, cup 160 | onion, onions
11313 | Peas, boiled             | cooked, complex |   78 5.15 14.26 0.27   4.5    4.4 0.05 0.11 0.02       0 0.31  72 | cup 160 | peas, green peas
11333 | Green pepper, raw        | raw             |   20 0.86  4.64 0.17   1.7    2.4 0.06 0.05 0.01       0 0.04   3 | medium 119, cup 149 | green pepper, bell pepper
11821 | Red pepper, raw          | raw             |   31 0.99  6.03  0.3   2.1    4.2 0.03 0.05 0.03       0 0.04   4 | medium 119, cup 149 | red pepper, pepper, capsicum
11529 | Tomato, raw              | raw             |   18 0.88  3.89  0.2   1.2   2.63 0.03 0.08    0       0 0.03   5 | medium 123, small 91, large 182, cherry 17, cup 180 | tomato, tomatoes
11531 | Tomatoes, canned         | canned          |   16 0.79  3.47 0.25   1.9   2.55 0.03  0.1    0       0 0.03 115 | cup 240 | canned tomatoes, tinned tomatoes
11546 | Tomato paste             | canned          |   82 4.32 18.91 0.47   4.1  12.18  0.1 0.15 0.01       0 0.12  59 | tbsp 16, cup 262 | tomato puree
11478 | Zucchini, boiled         | cooked          |   15 1.14  2.69 0.36     1   1.71 0.07 0.06 0.09       0 0.04   3 | cup 180 | zucchini, courgette, courgettes
11486 | Butternut squash, baked  | cooked, complex |   40  0.9 10.49 0.09   3.2   1.97 0.02 0.01 0.02       - 0.05   4 | cup 205 | squash, butternut
11081 | Beets, boiled            | cooked          |   44 1.68  9.96 0.18     2   7.96 0.03 0.06 0.01       0 0.07  77 | beet 50, cup 170 | beets, beetroot
11584 | Mixed vegetables, boiled | cooked          |   65 2.86 13.09 0.15   4.4   3.12 0.03 0.05 0.02       0 0.19  35 | cup 182 | mixed vegetables, vegetables, veg
11937 | Pickles, dill            | as eaten        |   12  0.5  2.41  0.3     1   1.07 0.08 0.05 0.07       0 0.03 809 | spear 35, large 135, cup 155 | pickle, pickles, gherkins
`);
