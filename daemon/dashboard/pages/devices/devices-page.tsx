import { readDevices } from '../../api/session.ts';
import { Page, Section } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { DeviceTable } from './device-table.tsx';
import { PairAnother } from './pair-another.tsx';
import { StoreHealth } from './store-health.tsx';

/** The devices that were paired, a code for one more, and how the store is. */
export function DevicesPage() {
  const loaded = useLoaded('devices', readDevices);
  return (
    <Page
      title="Devices"
      lead="A device is a browser or a phone that was paired. Each has its own key, which you can take back."
    >
      <div class="two-columns even">
        <Section title="Paired">
          <Shown loaded={loaded}>
            {(devices) => <DeviceTable devices={devices} reload={loaded.reload} />}
          </Shown>
        </Section>
        <div>
          <Section title="Pair another">
            <PairAnother />
          </Section>
          <Section title="Store">
            <StoreHealth />
          </Section>
        </div>
      </div>
    </Page>
  );
}
