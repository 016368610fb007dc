/// What a voice is given to read, against what a framer says.

#include "words/aloud/aloud.h"

#include <catch_amalgamated.hpp>

#include "measure/print.h"

using namespace bentbook;

namespace {
Language language(std::string_view tag) { return *find_language(tag); }
}  // namespace

TEST_CASE("measures, angles and marks are read as they are said", "[aloud]") {
  struct Example {
    const char *shown, *en, *es, *fr;
  };
  const Example examples[] = {
      {"4′ 7 3⁄8″", "four feet, seven and three eighths inches", "cuatro pies, siete pulgadas y tres octavos",
       "quatre pieds, sept pouces et trois huitièmes"},
      {"12′ 0″", "twelve feet, zero inches", "doce pies, cero pulgadas", "douze pieds, zéro pouce"},
      {"1′ 1″", "one foot, one inch", "un pie, una pulgada", "un pied, un pouce"},
      {"21′ 0 1⁄2″", "twenty-one feet, zero and a half inches", "veintiún pies, cero pulgadas y media",
       "vingt et un pieds, zéro pouce et demi"},
      {"1 1⁄2″", "one and a half inches", "una pulgada y media", "un pouce et demi"},
      {"3⁄8″", "three eighths of an inch", "tres octavos de pulgada", "trois huitièmes de pouce"},
      {"1⁄2″", "half an inch", "media pulgada", "un demi-pouce"},
      {"1⁄4″", "one quarter of an inch", "un cuarto de pulgada", "un quart de pouce"},
      {"21⁄64″", "twenty-one sixty-fourths of an inch", "veintiún sesentaicuatroavos de pulgada",
       "vingt et un soixante-quatrièmes de pouce"},
      {"31″", "thirty-one inches", "treinta y una pulgadas", "trente et un pouces"},
      {"151 3⁄8″", "151 and three eighths inches", "151 pulgadas y tres octavos", "151 pouces et trois huitièmes"},
      {"7.375″", "seven point three seven five inches", "siete punto tres siete cinco pulgadas",
       "sept virgule trois sept cinq pouces"},
      {"1403 mm", "1403 millimetres", "1403 milímetros", "1403 millimètres"},
      {"1 mm", "1 millimetre", "1 milímetro", "1 millimètre"},
      {"1403.5 mm", "1403 point 5 millimetres", "1403 punto 5 milímetros", "1403 virgule 5 millimètres"},
      {"3.205 m", "three point two zero five metres", "tres punto dos cero cinco metros",
       "trois virgule deux zéro cinq mètres"},
      {"39.8°", "thirty-nine point eight degrees", "treinta y nueve punto ocho grados",
       "trente-neuf virgule huit degrés"},
      {"45.0°", "forty-five degrees", "cuarenta y cinco grados", "quarante-cinq degrés"},
      {"81°", "eighty-one degrees", "ochenta y un grados", "quatre-vingt-un degrés"},
      {"71°", "seventy-one degrees", "setenta y un grados", "soixante et onze degrés"},
      {"−3⁄16″", "minus three sixteenths of an inch", "menos tres dieciseisavos de pulgada",
       "moins trois seizièmes de pouce"},
      {"≈ 7″ ± 1⁄16″", "about seven inches plus or minus one sixteenth of an inch",
       "aproximadamente siete pulgadas más o menos un dieciseisavo de pulgada",
       "environ sept pouces plus ou moins un seizième de pouce"},
      {"P-A2", "P A 2", "P A 2", "P A 2"},
      {"B-A1.2 · 3", "B A 1, 2, three", "B A 1, 2, tres", "B A 1, 2, trois"},
      {"P-A12.", "P A 12.", "P A 12.", "P A 12."},
      {"8 × 10", "eight by ten", "ocho por diez", "huit par dix"},
      {"800 mm/m", "800 mm/m", "800 mm/m", "800 mm/m"},
      {"7 1⁄2:12", "seven 1/2:12", "siete 1/2:12", "sept 1/2:12"},
      {"11-25 14:05", "11-25 14:05", "11-25 14:05", "11-25 14:05"},
      {"83.33 %", "83.33 %", "83.33 %", "83.33 %"},
      {"", "", "", ""},
  };
  for (const Example& e : examples) {
    CHECK(aloud_text(e.shown, language("en")) == e.en);
    CHECK(aloud_text(e.shown, language("es")) == e.es);
    CHECK(aloud_text(e.shown, language("fr-CA")) == e.fr);
  }
}

TEST_CASE("what is no measure stays as it is", "[aloud]") {
  for (const char* kept : {"Cut the tenon, A: shoulder", "2x4", "H₂O", "a-b", "Señal2", "A-", "-"})
    CHECK(aloud_text(kept, language("en")) == kept);
  CHECK(aloud_sentence("Stop, from face 2", "4′ 7 3⁄8″", language("en")) ==
        "Stop, from face two: four feet, seven and three eighths inches.");
  CHECK(aloud_sentence("", "Held!", language("en")) == "Held!");
  CHECK(aloud_sentence("Label it", "", language("en")) == "Label it.");
}

TEST_CASE("every length in every form is read without a sign that a voice does not know", "[aloud]") {
  for (int form = 0; form < 5; ++form)
    for (const int denominator : {8, 16, 32, 64})
      for (std::int64_t n = -300; n < 20'000; n += 137) {
        const LengthStyle style{static_cast<LengthForm>(form), denominator, form == 3 ? 1 : 3};
        const std::string shown = print_length(Length::inches(n, 64), style, Marks::kScreen).text;
        for (const char* tag : {"en", "es", "fr-CA"}) {
          const std::string said = aloud_text(shown, language(tag));
          INFO(shown << " in " << tag << ": " << said);
          for (const char* sign : {"′", "″", "⁄", "−", "/", "{"}) CHECK(said.find(sign) == std::string::npos);
        }
      }
}
