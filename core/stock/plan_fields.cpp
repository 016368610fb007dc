#include "stock/plan_fields.h"

#include "roof/rafter_fields.h"

namespace bentbook {
namespace {

/// A mark in a list of marks, a length in a list of lengths.
struct Marked {
  std::string mark;
};
struct Sold {
  Length length;
};

/// Values in a list of objects of one member each.
template <class Item, class Value>
void list_of_one(Fields& fields, const char* key, std::vector<Value>& values, Value Item::*member, unsigned most) {
  std::vector<Item> items(values.size());
  for (std::size_t i = 0; i < items.size(); ++i) items[i].*member = values[i];
  fields.list(key, items, most);
  if (!fields.reads()) return;
  values.resize(items.size());
  for (std::size_t i = 0; i < items.size(); ++i) values[i] = std::move(items[i].*member);
}

}  // namespace

// Found through their arguments' namespace, so not in an unnamed one.

static void describe(Fields& fields, Marked& m) { fields.text("mark", m.mark); }

static void describe(Fields& fields, Sold& s) { fields.length("length", s.length, kOnBuilding); }

static void describe(Fields& fields, StickDefect& d) {
  fields.length("from", d.from);
  fields.length("to", d.to);
}

static void describe(Fields& fields, YardStick& y) {
  fields.text("name", y.name);
  fields.object("section", y.section);
  fields.text("species", y.species);
  fields.length("length", y.length, kOnBuilding);
  fields.integer("count", y.count, 1, limits::kMostYard);
  fields.list("defects", y.defects, 100);
}

static void describe(Fields& fields, StockPrice& p) {
  fields.object("section", p.section);
  fields.text("species", p.species);
  fields.length("length", p.length, kOnBuilding);
  fields.integer("price", p.price, 0, 100'000'000);
}

static void describe(Fields& fields, HeldStick& h) {
  fields.integer("number", h.number, 1, 1'000'000);
  fields.object("section", h.section);
  fields.text("species", h.species);
  fields.length("length", h.length, kOnBuilding);
  fields.text("yard", h.yard);
  fields.flag("used", h.used);
  list_of_one(fields, "marks", h.marks, &Marked::mark, 1000);
}

void describe(Fields& fields, StockPlan& s) {
  fields.length("shortest", s.shortest, kOnBuilding);
  fields.length("longest", s.longest, kOnBuilding);
  fields.length("step", s.step, kOnBuilding);
  list_of_one(fields, "lengths", s.lengths, &Sold::length, limits::kMostLengths);
  fields.flag("longer", s.longer);
  fields.length("kerf", s.kerf);
  fields.length("trim", s.trim);
  fields.length("allowance", s.allowance);
  fields.length("keep", s.keep, kOnBuilding);
  fields.choice("aim", s.aim, kStockAimWords);
  fields.choice("priced_by", s.priced_by, kPricedByWords);
  fields.integer("price", s.price, 0, 100'000'000);
  fields.list("prices", s.prices, limits::kMostYard);
  fields.list("yard", s.yard, limits::kMostYard);
  fields.list("held", s.held, 10'000);
}

}  // namespace bentbook
