// Sends the text line once a second. Fill in the two functions for your amplifier.
float emfMicrovolts();      // voltage at the thermocouple terminals, in microvolts
float coldJunctionC();      // temperature of those terminals

void setup() { Serial.begin(9600); }

void loop() {
  String body = "emf_uv=" + String(emfMicrovolts(), 1) + " cj_c=" + String(coldJunctionC(), 2);
  uint8_t crc = 0;
  for (unsigned i = 0; i < body.length(); i++) {
    crc ^= body[i];
    for (int bit = 0; bit < 8; bit++) crc = crc & 0x80 ? crc << 1 ^ 0x07 : crc << 1;
  }
  char closing[12];
  snprintf(closing, sizeof closing, " *%u:%02X", body.length(), crc);
  Serial.print(body);
  Serial.println(closing);
  delay(1000);
}
