import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react';
import './tabs.css';

type Tab = { id: string; name: ReactNode; panel: () => ReactNode };
type Props = {
  /** What the tabs are of, for a reader who can't see them. */
  label: string;
  tabs: readonly Tab[];
  open: string;
  onOpen: (id: string) => void;
};

/**
 * Tabs of which one is open, and only its panel stands on the page. Arrow keys go round, Home and End go to the ends, and what is
 * reached is opened; Tab leads on into the panel.
 *
 * @source WAI-ARIA Authoring Practices, tabs with automatic activation
 */
export function Tabs({ label, tabs, open, onOpen }: Props) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const at = Math.max(
    0,
    tabs.findIndex((tab) => tab.id === open),
  );
  const shown = tabs[at];
  const byKey = (event: KeyboardEvent) => {
    const last = tabs.length - 1;
    const to = {
      ArrowRight: at === last ? 0 : at + 1,
      ArrowLeft: at === 0 ? last : at - 1,
      Home: 0,
      End: last,
    }[event.key];
    const next = to === undefined ? undefined : tabs[to];
    if (to === undefined || next === undefined) return;
    event.preventDefault();
    onOpen(next.id);
    list.current?.querySelectorAll<HTMLElement>('[role="tab"]')[to]?.focus();
  };
  return (
    <div className="tabs">
      <div ref={list} className="tab-list" role="tablist" aria-label={label} onKeyDown={byKey}>
        {tabs.map((tab) => (
          <button
            key={tab.id}
            type="button"
            role="tab"
            id={`${id}-${tab.id}`}
            aria-selected={tab === shown}
            aria-controls={tab === shown ? `${id}-panel` : undefined}
            tabIndex={tab === shown ? 0 : -1}
            onClick={() => onOpen(tab.id)}
          >
            {tab.name}
          </button>
        ))}
      </div>
      {shown !== undefined && (
        <div key={shown.id} id={`${id}-panel`} role="tabpanel" aria-labelledby={`${id}-${shown.id}`}>
          {shown.panel()}
        </div>
      )}
    </div>
  );
}
