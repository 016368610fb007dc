#include "frame/joints/end_view.h"
#include "measure/fields.h"

namespace bentbook {

void describe(Fields& fields, HousedButt& j) { fields.length("housing", j.housing, {{}, Length::inches(12)}); }

void cut_butt(Work& work, const EndView& v) {
  if (v.proud > 1e-9) {
    cut_housing(work, v);
    work.frame.joints.back().tools.add({ToolSetting::kDepthStop, v.receiver, v.proud, v.face});
  }
  cut_to_shoulder(work, v, 0);
  shoulder_contact(work, v, {v.t_lo, v.t_hi}, v.wide);
  keep_ways(work, {v.u, -1 * v.n, v.t, -1 * v.t, v.w, -1 * v.w});
}

void join_butt(Work& work, const EndMeeting& meeting, const HousedButt& type) {
  EndView view;
  if (begin_end_joint(work, meeting, JointKind::kHousedButt, type.housing.in(), view)) cut_butt(work, view);
}

}  // namespace bentbook
