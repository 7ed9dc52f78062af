// A MAX31855 (letter K) read by a microcontroller, sent as the text line of ../../text-line.md.
// For Arduino-type boards. Wires: chip select to pin 10, data and clock to the board's SPI pins.
// A 5 V board needs an amplifier board with level shifters: the chip itself stands 3.6 V at most.
#include <SPI.h>

const int CHIP_SELECT = 10;

// Sends the fields, closed by their length and CRC-8 (polynomial 07 hex; "123456789" gives F4).
void sendLine(const char *fields) {
  uint8_t check = 0;
  for (const char *p = fields; *p; p++) {
    check ^= (uint8_t)*p;
    for (uint8_t bit = 0; bit < 8; bit++) {
      check = (check & 0x80) ? (uint8_t)(check << 1) ^ 0x07 : (uint8_t)(check << 1);
    }
  }
  char closing[12];
  snprintf(closing, sizeof closing, " *%u:%02X\n", (unsigned)strlen(fields), (unsigned)check);
  Serial.print(fields);
  Serial.print(closing);
}

// One frame of the chip, most significant bit first.
uint32_t readFrame() {
  SPI.beginTransaction(SPISettings(500000, MSBFIRST, SPI_MODE0));
  digitalWrite(CHIP_SELECT, LOW);
  uint32_t frame = 0;
  for (uint8_t i = 0; i < 4; i++) frame = frame << 8 | SPI.transfer(0);
  digitalWrite(CHIP_SELECT, HIGH);
  SPI.endTransaction();
  return frame;
}

void setup() {
  Serial.begin(9600);
  pinMode(CHIP_SELECT, OUTPUT);
  digitalWrite(CHIP_SELECT, HIGH);
  SPI.begin();
}

void loop() {
  delay(1000);
  uint32_t frame = readFrame();
  bool causes = frame & 7;
  bool fault = frame & 0x10000UL;
  // A frame that no chip sends: say nothing, so that the silence is seen for what it is.
  if (frame == 0 || (frame & 0x20008UL) || causes != fault) return;
  if (frame & 4) return sendLine("fault=short_supply");
  if (frame & 2) return sendLine("fault=short_ground");
  if (frame & 1) return sendLine("fault=open");
  float shownC = (int16_t)(frame >> 16) / 4 * 0.25f;  // fault and reserved bit are 0 here
  float coldC = (int16_t)(frame & 0xFFF0) / 16 * 0.0625f;
  char emf[12], cold[12], fields[40];
  dtostrf(41.276f * (shownC - coldC), 1, 1, emf);  // undoes the chip's straight line
  dtostrf(coldC, 1, 2, cold);
  snprintf(fields, sizeof fields, "emf_uv=%s cj_c=%s", emf, cold);
  sendLine(fields);
}
