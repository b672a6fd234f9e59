/**
 * How to sign in to the demo hospital, and to no other: its people are invented, so what they know is no secret. The
 * sign-in page of a demo says so.
 */
export const DEMO_PASSWORD = 'larkmoor infirmary';
export const DEMO_PIN = '274091';

/** What is on each demo person's badge. */
export const DEMO_BADGES: Readonly<Record<string, string>> = {
  'person_wren-adeyemi': 'KWBADGE8Q0YRJAY57RDEZ55MKHK92KH3N',
  'person_tomas-birkett': 'KWBADGEQR5R4XZASR9CRHP9KNAA2BEXZX',
  'person_jolene-stott': 'KWBADGE4AA11GPF1HB1935HY88MJ3HM75',
  'person_maurice-oduya': 'KWBADGEBJT8X68EFBSVYFSGF9G4KTVY5H',
  'person_hettie-crane': 'KWBADGEZMSZP86M25H4JMG752KDNMGMFY',
  'person_ines-halloran': 'KWBADGEE1ADS4SPWC6NCQ54T4XK0BGE0C',
  'person_tobias-wray': 'KWBADGEGGVDA4MEHH96EKAFDKWJJ28BER',
  'person_sunita-marlowe': 'KWBADGEVBNDF7VCC5B3W8ETYDZ52C1TWN',
  'person_callum-denby': 'KWBADGE5VQMPMXB1DQXPQC5RMGP3RKN3K',
  'person_ruth-okonjo': 'KWBADGEASCRR2V7AY2G86K3S0WF0FH412',
  'person_piotr-lennard': 'KWBADGEHYH3QWAH4RP5JSE8YF1H20VMS2',
  'person_dilys-harrow': 'KWBADGE5MRMXMC5EX68J03W96N24NYZGQ',
  'person_kofi-brandreth': 'KWBADGE8NBVFMWDCSE4WG4JANR0NGNB5Q',
  'person_gwen-sallis': 'KWBADGE1G5D1E5VVGFF14F3XGQ5PAAPWG',
  'person_amir-foxton': 'KWBADGE5D8KR4JG08SH6EJB6VHGAXW4ED',
  'person_nell-ashdown': 'KWBADGESYFEZDJ69R19TE1J8D705HXF8S',
  'person_joseph-quayle': 'KWBADGEQTAYP587WMM55ZR1NXM1K3Q8QW',
  'person_edda-winslow': 'KWBADGENHGJD5JSCVRTXB1RF0S7Y4Q8RB',
  'person_ravi-thorne': 'KWBADGE5S7PMSBR6X1V2N6VXB8SSPPJDJ',
};
