/** Upper bounds of the classes in which answers are counted, s. */
const BOUNDS = [0.005, 0.025, 0.1, 0.5, 2.5];

/** OpenMetrics 1.0 text. */
export const METRICS_TYPE = 'application/openmetrics-text; version=1.0.0; charset=utf-8';

export type Metrics = ReturnType<typeof createMetrics>;

/** What the daemon counts of itself: numbers only, none of which is about a person. */
export function createMetrics() {
  const requests = new Map<string, number>();
  const classes = BOUNDS.map(() => 0);
  let seconds = 0;
  let answers = 0;

  return {
    count(method: string, status: number, ms: number): void {
      const labels = `method="${/^[A-Z]{1,7}$/.test(method) ? method : 'other'}",status="${Math.floor(status / 100)}xx"`;
      requests.set(labels, (requests.get(labels) ?? 0) + 1);
      seconds += ms / 1000;
      answers += 1;
      BOUNDS.forEach((bound, i) => {
        if (ms <= bound * 1000) classes[i] = (classes[i] ?? 0) + 1;
      });
    },

    /** Beside what was counted, the store and the process as they stand. */
    text({
      changes,
      sound,
      streams,
      nowMs,
    }: {
      changes: number;
      sound: boolean;
      streams: number;
      nowMs: number;
    }): string {
      const { user, system } = process.cpuUsage();
      const lines = [
        ...family('platewright_requests', 'counter', 'Requests answered.'),
        ...[...requests].map(([labels, count]) => `platewright_requests_total{${labels}} ${count}`),
        ...family('platewright_answer_seconds', 'histogram', 'Time to the head of an answer.'),
        ...BOUNDS.map((bound, i) => `platewright_answer_seconds_bucket{le="${bound}"} ${classes[i]}`),
        `platewright_answer_seconds_bucket{le="+Inf"} ${answers}`,
        `platewright_answer_seconds_sum ${seconds}`,
        `platewright_answer_seconds_count ${answers}`,
        ...gauge('platewright_changes_stored', 'Number of the last stored change.', changes),
        ...gauge('platewright_store_sound', '1 unless the store was found damaged.', sound ? 1 : 0),
        ...gauge('platewright_event_streams', 'Event streams that are open.', streams),
        ...gauge('process_resident_memory_bytes', 'Memory in use.', process.memoryUsage.rss()),
        ...gauge(
          'process_start_time_seconds',
          'When the daemon began, since 1970.',
          nowMs / 1000 - process.uptime(),
        ),
        ...family('process_cpu_seconds', 'counter', 'Processor time used.'),
        `process_cpu_seconds_total ${(user + system) / 1e6}`,
        '# EOF',
      ];
      return `${lines.join('\n')}\n`;
    },
  };
}

function family(name: string, type: string, help: string): string[] {
  return [`# TYPE ${name} ${type}`, `# HELP ${name} ${help}`];
}

function gauge(name: string, help: string, value: number): string[] {
  return [...family(name, 'gauge', help), `${name} ${value}`];
}
