/** A whole amount with its thousands set apart by spaces that do not break, and its currency. */
export function moneyText(amount: number, currency: string): string {
  const digits = String(Math.abs(Math.round(amount))).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
  return [`${Math.round(amount) < 0 ? '\u2212' : ''}${digits}`, currency].filter(Boolean).join('\u00a0');
}
