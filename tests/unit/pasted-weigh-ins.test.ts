import { describe, expect, it } from 'vitest';
import { orderIn } from '../../daemon/dashboard/pages/body/read-date.ts';
import { readWeighIns } from '../../daemon/dashboard/pages/body/read-weigh-ins.ts';

const inKg = { unit: 'kg', order: 'day first', today: '2025-04-03' } as const;
const read = (text: string, order: 'day first' | 'month first' | null = 'day first') =>
  readWeighIns(text, { unit: 'kg', order, today: '2025-04-03' }).map((line) =>
    line.wrong === null ? `${line.date} ${line.kg}` : line.wrong,
  );

describe('pasted weigh-ins', () => {
  it('are read with any usual separator, decimal mark and date', () => {
    const text =
      '2025-03-01,82.4\n01.03.2025; 82,4 kg\n"2025-03-01","82.4"\n1 Mar 2025\t82.4\n2025-03-01 07:10, 82.4';
    expect(read(text)).toEqual(Array(5).fill('2025-03-01 82.4'));
  });

  it('ask how a date with slashes is meant', () => {
    expect(read('3/4/2025 80')).toEqual(['2025-04-03 80']);
    expect(read('3/4/2025 80', 'month first')).toEqual(['2025-03-04 80']);
    expect(read('3/4/2025 80\n1 Mar 2025 80', null)).toEqual([
      'Choose above whether the day or the month comes first.',
      '2025-03-01 80',
    ]);
  });

  it.each([
    ['3/20/2025 80\n3/4/2025 80', 'month first'],
    ['3/4/2025 80\n"20/3/2025",80', 'day first'],
    ['3/4/2025 80\n2025-03-20 80', null],
    ['2025-03-20 80/20', null],
  ])('tell the order from a date that has only one: %j', (text, order) => {
    expect(orderIn(text)).toBe(order);
  });

  it('pass over a head and further columns, and read typed units', () => {
    expect(read('Date,Weight,Note\n2025-03-01,82.4,"after travel, late"')).toEqual(['2025-03-01 82.4']);
    expect(readWeighIns('2025-03-01,180 lb', inKg)[0]).toMatchObject({ kg: 81.6466266 });
  });

  it('say what is wrong with each line that can’t be read, and keep its number', () => {
    const lines = readWeighIns('2025-03-01,82.4\n\n2025-02-30,80\n2025-03-02,\n2025-03-03,8240', inKg);
    expect(lines.map(({ line }) => line)).toEqual([1, 3, 4, 5]);
    expect(lines.map(({ wrong }) => wrong)).toEqual([
      null,
      expect.stringMatching(/date/),
      expect.stringMatching(/body mass/),
      expect.stringMatching(/20.0 kg to 400.0 kg/),
    ]);
  });
  it('refuse a date to come, and say in which line', () => {
    const lines = readWeighIns('2025-04-03,82.4\n2025-04-04,82.4\n4/5/2025 82.4', inKg);
    expect(lines.map(({ line, wrong }) => [line, wrong])).toEqual([
      [1, null],
      [2, expect.stringMatching(/^2025-04-04 is still to come/)],
      [3, expect.stringMatching(/^2025-05-04 is still to come/)],
    ]);
  });
});
