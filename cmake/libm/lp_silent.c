/* What stands in for the linear program solver's files that read, write and print, which nobody here asks for: they and
   the C library's printing behind them would be a good part of what the raising downloads. */
#include <lp_lib.h>

#include "lp_MPS.h"
#include "lp_report.h"
#include "lp_wlp.h"

void __VACALL report(lprec* lp, int level, char* format, ...) {}
char* __VACALL explain(lprec* lp, char* format, ...) { return ""; }

void REPORT_objective(lprec* lp) {}
void REPORT_solution(lprec* lp, int columns) {}
void REPORT_constraints(lprec* lp, int columns) {}
void REPORT_duals(lprec* lp) {}
void REPORT_extended(lprec* lp) {}
void REPORT_constraintinfo(lprec* lp, char* info) {}
void REPORT_modelinfo(lprec* lp, MYBOOL names, char* info) {}
void REPORT_lp(lprec* lp) {}
void REPORT_scales(lprec* lp) {}
MYBOOL REPORT_tableau(lprec* lp) { return FALSE; }
MYBOOL REPORT_debugdump(lprec* lp, char* file, MYBOOL live) { return FALSE; }

MYBOOL MPS_readfile(lprec** lp, char* file, int type, int verbose) { return FALSE; }
MYBOOL __WINAPI MPS_readhandle(lprec** lp, FILE* file, int type, int verbose) { return FALSE; }
MYBOOL __WINAPI MPS_readex(lprec** lp, void* user, read_modeldata_func read, int type, int verbose) { return FALSE; }
MYBOOL MPS_writefile(lprec* lp, int type, char* file) { return FALSE; }
MYBOOL MPS_writehandle(lprec* lp, int type, FILE* file) { return FALSE; }
MYBOOL MPS_readBAS(lprec* lp, int type, char* file, char* info) { return FALSE; }
MYBOOL MPS_writeBAS(lprec* lp, int type, char* file) { return FALSE; }
MYBOOL LP_writefile(lprec* lp, char* file) { return FALSE; }
MYBOOL LP_writehandle(lprec* lp, FILE* file) { return FALSE; }
MYBOOL __WINAPI read_params(lprec* lp, char* file, char* options) { return FALSE; }
MYBOOL __WINAPI write_params(lprec* lp, char* file, char* options) { return FALSE; }
