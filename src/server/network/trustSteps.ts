/** What a step is drawn as. */
export type TrustPicture = 'fetch' | 'list' | 'install' | 'switch' | 'file';

/** How one kind of device comes to trust this computer. Names of menus are from memory: they differ between versions. */
export type TrustWay = {
  id: string;
  device: string;
  steps: { words: string; picture: TrustPicture }[];
  undo: string;
};

export const trustWays: readonly TrustWay[] = [
  {
    id: 'ipad',
    device: 'iPad or iPhone',
    steps: [
      {
        words:
          'Open this page in Safari, touch “Fetch the certificate” above, and allow the download of a profile.',
        picture: 'fetch',
      },
      {
        words:
          'Open Settings. Near the top stands “Profile Downloaded”; if not, look under General, VPN & Device Management. Touch it, touch Install, and enter the passcode of the device.',
        picture: 'install',
      },
      {
        words:
          'In Settings go to General, About, Certificate Trust Settings at the very end, and turn on the switch beside the name that begins with “Underside on”. Without this step the device knows the certificate but does not trust it.',
        picture: 'switch',
      },
    ],
    undo: 'Settings, General, VPN & Device Management: choose the profile and remove it.',
  },
  {
    id: 'android',
    device: 'Android tablet or phone',
    steps: [
      {
        words:
          'Touch “Fetch the certificate” above and keep the file. If the device says that it has to be installed from Settings, that is as it should be.',
        picture: 'fetch',
      },
      {
        words:
          'Open Settings and search there for “certificate”. Under Security (or More security settings, Encryption & credentials) choose “Install a certificate”, then “CA certificate”.',
        picture: 'list',
      },
      {
        words:
          'The device cautions that whoever made the certificate could read along. This one can vouch for computers of a local network only, not for any site of the internet. Touch “Install anyway”, and choose the file you fetched.',
        picture: 'install',
      },
    ],
    undo: 'Settings, “Trusted credentials”, User: choose the one that begins with “Underside on” and remove it.',
  },
  {
    id: 'windows',
    device: 'Windows laptop',
    steps: [
      { words: 'Choose “Fetch the certificate” above, and open the file when it is there.', picture: 'file' },
      {
        words:
          'Choose “Install Certificate”, “Current User”, then “Place all certificates in the following store”, and with Browse the store “Trusted Root Certification Authorities”.',
        picture: 'list',
      },
      {
        words:
          'Finish. Windows shows a thumbprint and asks whether to install: choose Yes. Close the browser and open it again.',
        picture: 'install',
      },
    ],
    undo: 'Search for “Manage user certificates”, open Trusted Root Certification Authorities, and delete the one that begins with “Underside on”.',
  },
  {
    id: 'mac',
    device: 'Mac',
    steps: [
      {
        words:
          'Choose “Fetch the certificate” above, and open the file: Keychain Access asks where to add it. Choose “login”.',
        picture: 'file',
      },
      {
        words:
          'In Keychain Access find the certificate that begins with “Underside on”, open it, unfold Trust, and choose “Always Trust” beside “When using this certificate”.',
        picture: 'list',
      },
      {
        words: 'Close the window and enter your password. Close the browser and open it again.',
        picture: 'switch',
      },
    ],
    undo: 'In Keychain Access choose the certificate that begins with “Underside on” and delete it.',
  },
];
