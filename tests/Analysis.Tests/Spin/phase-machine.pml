/* A small phase machine of a lubrication controller, the same as PhaseMachine.cs, for spin's verifier. One step is one d_step;
   the sizes are handed over as definitions: REST, WAIT, OVERDUE, DOSES. */
#define PH_REST 0
#define PH_DOSE 1
#define PH_PAUSE 2
#define PH_PRIME 3
#define PH_STOPPED 4
#define PH_FAILED 5

byte phase = PH_REST;
byte rest = REST;
byte wait = 0;
byte tried = 0;
byte overdue = 0;
byte before = 0;
byte latched = 0;
byte edges = 0;

/* sw: the cycle switch; stop: the operating stop; empty: the reservoir; press: 0 none, 1 reset, 2 start */
#define STEP(sw, stop, empty, press) d_step { \
  if :: overdue < OVERDUE -> overdue++ :: else fi; \
  if :: rest > 0 -> rest-- :: else fi; \
  if :: empty -> latched = 2 :: else -> if :: press == 1 -> latched = 0 :: else fi fi; \
  if \
  :: stop -> phase = PH_STOPPED; wait = 0 \
  :: else -> \
    if \
    :: phase == PH_REST -> if :: latched == 2 -> phase = PH_FAILED :: else -> if :: rest == 0 -> phase = PH_DOSE; wait = 0; tried = 0 :: else fi fi \
    :: phase == PH_DOSE -> \
      if \
      :: latched == 2 -> phase = PH_FAILED \
      :: else -> \
        if \
        :: sw && !before -> wait = 0; edges++; \
          if :: edges == DOSES -> edges = 0; overdue = 0; rest = REST; phase = PH_REST :: else fi \
        :: else -> wait++; \
          if :: wait == WAIT -> wait = 0; if :: tried -> latched = 1; phase = PH_FAILED :: else -> tried = 1; phase = PH_PAUSE fi :: else fi \
        fi \
      fi \
    :: phase == PH_PAUSE -> if :: latched == 2 -> phase = PH_FAILED :: else -> wait++; if :: wait == WAIT -> wait = 0; phase = PH_DOSE :: else fi fi \
    :: phase == PH_STOPPED -> if :: press == 2 -> if :: latched -> phase = PH_FAILED :: else -> phase = PH_REST fi :: else fi \
    :: phase == PH_FAILED -> if :: !latched -> wait = 0; phase = PH_REST :: else fi \
    fi \
  fi; \
  before = sw; \
  assert(!(phase == PH_FAILED) || latched) \
}

#define BUTTONS(sw, stop, empty) :: STEP(sw, stop, empty, 0) :: STEP(sw, stop, empty, 1) :: STEP(sw, stop, empty, 2)

init {
  do
  BUTTONS(0, 0, 0)
  BUTTONS(1, 0, 0)
  BUTTONS(0, 1, 0)
  BUTTONS(1, 1, 0)
  BUTTONS(0, 0, 1)
  BUTTONS(1, 0, 1)
  BUTTONS(0, 1, 1)
  BUTTONS(1, 1, 1)
  od
}
