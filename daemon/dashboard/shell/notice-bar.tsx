import { useNotice } from '../state/notice.tsx';
import { useKeepPlace } from './keep-place.ts';

/** The bar at the foot: what was just done and the way back, or what failed and the way to try again. */
export function NoticeBar() {
  const { notice, dismiss } = useNotice();
  return (
    <div class="notice-place" role="status" aria-live={notice?.wrong ? 'assertive' : 'polite'}>
      {notice && (
        <div class={notice.wrong ? 'notice failed' : 'notice'}>
          <p>{notice.text}</p>
          {notice.action && <NoticeButton label={notice.action.label} run={notice.action.run} />}
          <NoticeButton label="Close" run={dismiss} />
        </div>
      )}
    </div>
  );
}

function NoticeButton({ label, run }: { label: string; run: () => void }) {
  const button = useKeepPlace<HTMLButtonElement>();
  return (
    <button ref={button} type="button" class="link" onClick={run}>
      {label}
    </button>
  );
}
