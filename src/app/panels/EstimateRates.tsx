import { useState } from 'react';
import type { Estimate, Rate } from '../../core/estimate/result.ts';
import { fixed } from '../../present/show.ts';
import { operationWords } from '../../present/words/estimate.ts';
import { setRate } from '../planDeeds.ts';
import { ratesText as text } from '../text/estimate.ts';

const fields = ['best', 'likely', 'worst', 'setUp'] as const;
type Field = (typeof fields)[number];

const textsOf = ({ each, setUp }: Rate): Record<Field, string> => ({
  best: fixed(each.best, 2),
  likely: fixed(each.likely, 2),
  worst: fixed(each.worst, 2),
  setUp: setUp.worst > 0 ? fixed(setUp.likely, 2) : '',
});

/** The rate table: ours is invented, and each row becomes yours by changing it. */
export const EstimateRates = ({ estimate }: { readonly estimate: Estimate }) => (
  <>
    <p className="small">{text.note}</p>
    <Labour estimate={estimate} />
    <table className="rate-table small">
      <thead>
        <tr>
          <th scope="col">{text.operation}</th>
          {fields.map((field) => (
            <th key={field} scope="col">
              {text.heads[field]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {estimate.rates.map((rate) => (
          <RateRow key={`${rate.operation} ${rate.record ?? ''}`} rate={rate} />
        ))}
      </tbody>
    </table>
  </>
);

const RateRow = ({ rate }: { readonly rate: Rate }) => {
  const start = textsOf(rate);
  const [typed, setTyped] = useState(start);
  const name = operationWords(rate.operation);
  const number = (field: Field): number => Number(typed[field]);
  const inOrder =
    fields.every((f) => Number.isFinite(number(f)) && number(f) >= 0) &&
    number('best') <= number('likely') &&
    number('likely') <= number('worst');
  const changed = fields.some((f) => typed[f] !== start[f]);
  const send = (): void => {
    if (!changed || !inOrder) return;
    setRate(
      {
        operation: rate.operation,
        hours: number('likely'),
        bestHours: number('best'),
        worstHours: number('worst'),
        ...(typed.setUp.trim() === '' ? {} : { setUpHours: number('setUp') }),
      },
      text.entered(name),
    );
  };
  return (
    <tr data-own={rate.record === undefined ? undefined : ''}>
      <th scope="row">{name}</th>
      {fields.map((field) => (
        <td key={field}>
          <input
            inputMode="decimal"
            aria-label={text.field(name, text.heads[field])}
            aria-invalid={changed && !inOrder}
            value={typed[field]}
            onChange={(e) => setTyped({ ...typed, [field]: e.target.value })}
            onBlur={(e) => {
              if (e.currentTarget.closest('tr')?.contains(e.relatedTarget)) return;
              send();
            }}
            onKeyDown={(e) => e.key === 'Enter' && send()}
          />
        </td>
      ))}
    </tr>
  );
};

const Labour = ({ estimate }: { readonly estimate: Estimate }) => {
  const [amount, setAmount] = useState(estimate.money ? String(estimate.money.perHour) : '');
  const [currency, setCurrency] = useState(estimate.money?.currency ?? '');
  const value = Number(amount);
  return (
    <div className="fields">
      <label className="field">
        <span className="caption">{text.money}</span>
        <input inputMode="decimal" value={amount} onChange={(e) => setAmount(e.target.value)} />
      </label>
      <label className="field">
        <span className="caption">{text.currency}</span>
        <input value={currency} onChange={(e) => setCurrency(e.target.value)} />
      </label>
      <button
        type="button"
        disabled={!(value > 0)}
        onClick={() =>
          setRate(
            {
              operation: 'labour',
              amount: value,
              ...(currency.trim() === '' ? {} : { currency: currency.trim() }),
            },
            text.money,
          )
        }
      >
        {text.use}
      </button>
    </div>
  );
};
