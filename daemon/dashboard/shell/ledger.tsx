import type { ComponentChildren } from 'preact';
import { useMayWrite } from '../state/athlete.tsx';
import { FirstRows } from './first-rows.tsx';
import { Remove, type RemoveProps } from './remove.tsx';

interface Column<R> {
  head: string;
  cell: (row: R) => ComponentChildren;
  /** Of the head and the cells: figures are a `number`, what a phone has no room for is `wide-only`. */
  class?: string;
}

interface LedgerProps<R> {
  caption: string;
  /** The first one names the row. */
  columns: readonly Column<R>[];
  rows: readonly R[];
  keyOf: (row: R) => string | number;
  /** So many rows stand there until all are asked for. */
  most?: number;
  /** The record behind a row, where it can be taken away. */
  remove?: (row: R) => RemoveProps;
}

/** A table of records. */
export function Ledger<R>({ caption, columns, rows, keyOf, most = rows.length, ...rest }: LedgerProps<R>) {
  const remove = useMayWrite() && rest.remove;
  return (
    <FirstRows rows={rows} most={most}>
      {(shown) => (
        <div class="scroll">
          <table class="ledger">
            <caption class="unseen">{caption}</caption>
            <thead>
              <tr>
                {columns.map(({ head, class: kind }) => (
                  <th key={head} scope="col" class={kind}>
                    {head}
                  </th>
                ))}
                {remove && (
                  <th scope="col">
                    <span class="unseen">Actions</span>
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {shown.map((row) => (
                <tr key={keyOf(row)}>
                  {columns.map(({ head, cell, class: kind }, index) =>
                    index === 0 ? (
                      <th key={head} scope="row" class={kind}>
                        {cell(row)}
                      </th>
                    ) : (
                      <td key={head} class={kind}>
                        {cell(row)}
                      </td>
                    ),
                  )}
                  {remove && (
                    <td class="number">
                      <Remove {...remove(row)} />
                    </td>
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </FirstRows>
  );
}
