import { useNotice } from '../state/notice.tsx';

/** The bar at the foot: what was just done and the way back, or what failed and the way to try again. */
export function NoticeBar() {
  const { notice, dismiss } = useNotice();
  return (
    <div class="notice-place" role="status" aria-live={notice?.wrong ? 'assertive' : 'polite'}>
      {notice && (
        <div class={notice.wrong ? 'notice failed' : 'notice'}>
          <p>{notice.text}</p>
          {notice.action && (
            <button type="button" class="link" onClick={notice.action.run}>
              {notice.action.label}
            </button>
          )}
          <button type="button" class="link" onClick={dismiss}>
            Close
          </button>
        </div>
      )}
    </div>
  );
}
