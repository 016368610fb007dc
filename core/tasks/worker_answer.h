#pragma once
/// Inside the Worker's side of the border: an answer, or why there is none, as bytes for read_answer().

#include "tasks/answer_fields.h"
#include "tasks/flat.h"

namespace bentbook {

template <class Answer>
std::string write_answer(Result<Answer> answer) {
  json::FlatWriter writer;
  bool good = answer.has_value();
  writer.flag("good", good);
  if (answer)
    describe(writer, *answer);
  else
    describe(writer, answer.error());
  return writer.bytes();
}

}  // namespace bentbook
