/**
 * What guessers try first among passwords that are long enough, and the short ones people lengthen with figures and
 * marks: compared whole, and by letters alone. Common practice, no source: such lists differ and all begin like this.
 */
export const COMMON_PASSWORDS: ReadonlySet<string> = new Set(
  `password passwort passw pass passpass passwordpassword mypassword yourpassword newpassword oldpassword thepassword
  changeme changemenow changeit letmein letmeinplease welcome welcomewelcome welcomeback iloveyou iloveyouiloveyou
  qwerty qwertyuiop qwertyuiopasdf qwertyuiopasdfgh qwertyuiopasdfghjkl qwertyuiopasdfghjklzxcvbnm qwertyqwerty
  qwertyqwertyqwerty asdfghjkl asdfghjklasdfghjkl zxcvbnm zxcvbnmzxcvbnm azerty azertyuiop qazwsxedc qazwsxedcrfv
  qazwsxedcrfvtgb abc abcabc abcdef abcdefgh abcdefghijklmnop abcdefghijklmno administrator administratoradministrator
  admin adminadmin adminadminadmin root superuser user username guest test testtest testtesttest testing secret
  topsecret trustno sunshine princess football baseball liverpool arsenal chelsea monkey dragon master shadow batman
  superman pokemon starwars michael jennifer jordan charlie summer winter spring autumn hospital theatre theatres
  surgery surgeon sterile sterileservices decontamination technician infirmary nhs nhsnhs welcometonhs kitwright
  correcthorsebatterystaple thequickbrownfox thequickbrownfoxjumps tobeornottobe opensesame default computer internet`
    .split(/\s+/)
    .concat(
      '123456789012345',
      '1234567890123456',
      '123456789123456789',
      '000000000000000',
      '111111111111111',
    ),
);
