import type { TighteningCard } from '../../../torque/card.ts';
import type { CardOrigin } from '../cardView.ts';

export interface ShownCard {
  readonly card: TighteningCard;
  readonly origin: CardOrigin;
  readonly exit: 0 | 1 | 2;
}
