; Generated from the vocabulary by `npm run generate`. Do not edit.

(comment) @comment

(text) @string

(escape) @string.escape

(date) @constant

(figure) @number

((number unit: (word) @number.unit)
  (#any-of? @number.unit "%" "/day" "/h" "A" "AWG" "Ah" "FIT" "Hz" "J" "K" "Mohm" "MΩ" "MΩ" "N" "N*m" "Nm" "N·m" "Pa" "V" "W" "Wh" "awg" "cm" "deg" "deg/s" "degC" "degF" "fit" "ft" "ft*lbf" "ft/min" "ft/s" "ft·lbf" "g" "h" "in" "inch" "kN" "kPa" "kW" "kg" "km/h" "kohm" "kΩ" "kΩ" "lb" "lbf" "lbf*ft" "lbf·ft" "lbs" "m" "m/min" "m/s" "m/s2" "m/s^2" "m/s²" "m2" "mA" "mV" "m^2" "min" "mm" "mm/s" "mm2" "mm^2" "mm²" "mph" "ms" "m²" "ohm" "ohms" "psf" "r/min" "rad" "rad/s" "rpm" "s" "sec" "t" "turn" "turns" "year" "years" "°" "°/s" "°C" "°F" "Ω" "Ω"))

[(tolerance) (range)] @operator

["{" "}"] @punctuation.bracket

[":" ","] @punctuation.delimiter

(model name: (word) @type)

((line word: (word) @keyword)
  (#any-of? @keyword "adjuster" "battery" "cable" "cable-model" "control" "drive" "drive-model" "function" "indicator" "leaf" "measured" "motion" "panel" "panel-model" "selector" "sensor" "sensor-model" "site" "solar" "subsystem"))

((line word: (word) @_line . (word) @type)
  (#any-of? @_line "adjuster" "cable" "cable-model" "control" "drive" "drive-model" "function" "indicator" "leaf" "panel" "panel-model" "selector" "sensor" "sensor-model" "subsystem"))

((line word: (word) @keyword.directive)
  (#any-of? @keyword.directive "accept" "language" "use"))

((line word: (word) @property)
  (#any-of? @property "accessory" "acts" "ambient" "area" "arms" "b10d" "breaker" "by" "capacity" "carries" "category" "chains-into" "class" "clearance" "closes" "coldest" "common-cause" "component" "consumes" "contact" "cores" "coverage" "curve" "cycles" "days-in-use" "deformation" "discharge" "double-insulated" "duty" "dwell" "earth-electrode" "earthing" "efficiency" "expects" "expects-no" "external-impedance" "feeds" "fitted" "force" "friction" "fuse" "ground-gap" "grouped" "guards" "heaviest-leaf" "height" "hinge-gap" "hinge-guard" "hinge-offset" "hinge-tilt" "infill" "infill-opening" "installed" "instrument" "insulation" "isolator" "kind" "lag" "lasts" "leaf-bracket" "leakage" "least-voltage" "leaves" "length" "lighting" "limits-force" "link" "mass" "measure" "measures" "method" "motor" "moves" "mttfd" "on" "opens" "option" "order" "output" "output-relay" "own-supply" "parts" "passes" "peak" "pedestrian" "pedestrian-entrance" "performance-level" "pfhd" "post-bracket" "post-proud" "pre-warning" "pressed-resistance" "private-supply" "protective-conductor" "ramp" "range" "reach" "reaction" "registered" "registers-sensors" "release" "required-level" "residual-current" "return-corner" "rises" "risk" "roller-spacing" "room-when-open" "rotation" "rules" "seat" "select" "senses-obstacles" "sets" "shaft" "shaft-speed" "shows" "sight" "signs" "slides" "slope" "slow-speed" "slow-zone" "speed" "stage" "standby" "stops-in" "stroke" "sun" "supply" "sweep" "tail" "terminal" "terminator" "testable" "tested-on-demand" "tests" "tests-relay-outputs" "thickness" "thrust" "torque" "traffic" "usage-class" "users" "vehicle" "voltage" "waiting-room" "watches" "widest-leaf" "width" "wind" "window" "wire" "working-wind"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "arms" "capacity" "carries" "component" "hinge-gap" "hinge-offset" "hinge-tilt" "infill-opening" "instrument" "motor" "post-bracket" "shaft" "slow-zone" "thrust" "torque" "traffic" "vehicle" "wind")
  (#any-of? @keyword.operator "at" "b10d" "base" "by" "calibrated" "channel" "coverage" "efficiency" "fitted" "greatest" "kind" "last" "least" "length" "lowest" "mttfd" "over" "power-factor" "return" "room" "taking" "terrain" "times"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "accept")
  (#any-of? @keyword.operator "because" "by" "until"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "closes")
  (#any-of? @keyword.operator "gap" "onto" "overlap"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "wire")
  (#any-of? @keyword.operator "in-series-with" "to"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "accessory")
  (#any-of? @keyword.operator "draws" "from"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "force")
  (#any-of? @keyword.operator "after-5-s" "after-750-ms" "gap" "height" "peak"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "pedestrian")
  (#any-of? @keyword.operator "dwell" "to"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "terminal")
  (#any-of? @keyword.operator "common" "terminator"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "output")
  (#any-of? @keyword.operator "at" "gives"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "measures")
  (#any-of? @keyword.operator "at" "over"))

((line word: (word) @_line (word) @keyword.operator)
  (#any-of? @_line "option")
  (#any-of? @keyword.operator "acts"))

((line word: (word) @_line (number unit: (word) @keyword.operator))
  (#any-of? @_line "accept" "accessory" "arms" "capacity" "carries" "closes" "component" "force" "hinge-gap" "hinge-offset" "hinge-tilt" "infill-opening" "instrument" "measures" "motor" "option" "output" "pedestrian" "post-bracket" "shaft" "slow-zone" "terminal" "thrust" "torque" "traffic" "vehicle" "wind" "wire")
  (#any-of? @keyword.operator "acts" "after-5-s" "after-750-ms" "at" "b10d" "base" "because" "by" "calibrated" "channel" "common" "coverage" "draws" "efficiency" "fitted" "from" "gap" "gives" "greatest" "height" "in-series-with" "kind" "last" "least" "length" "lowest" "mttfd" "onto" "over" "overlap" "peak" "power-factor" "return" "room" "taking" "terminator" "terrain" "times" "to" "until"))

((line word: (word) @_line (number unit: (word) @keyword.operator))
  (#any-of? @_line "pedestrian")
  (#any-of? @keyword.operator "dwell"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "acts" "breaker" "by" "component" "contact" "curve" "earthing" "expects-no" "hinge-tilt" "infill-opening" "insulation" "kind" "lag" "measure" "method" "opens" "output-relay" "passes" "pedestrian-entrance" "performance-level" "release" "required-level" "risk" "rules" "sets" "shows" "sight" "signs" "slides" "stage" "usage-class" "users" "watches" "wind")
  (#any-of? @constant.builtin "A" "B" "C" "D" "E" "I" "II" "III" "IV" "TN" "TT" "a" "articulated-arm" "automatic" "avoidable" "b" "beam" "blinking" "both-sides" "built" "c" "clock" "closed" "closing" "contactor-full-load" "contactor-small-load" "curtain" "d" "dark" "direct" "draft" "dwell" "e" "edge" "emergency-stop" "error" "europe" "fence" "first" "flat" "force" "full" "handle" "hold-to-run" "impulse" "intercom" "interlock-switch" "inward" "key" "key-switch" "keypad" "lag-closing" "lag-opening" "left" "limited" "linear" "linear-ram" "logarithmic" "loop" "mechanical" "multicore" "none" "normally-closed" "normally-open" "north-america" "note" "nothing" "often" "one-side" "open" "opening" "outward" "over-ceiling" "pedestrian" "position-switch" "post" "public" "push-button" "pvc" "rack" "relay-full-load" "relay-small-load" "right" "round" "rubber" "seat" "second" "seldom" "separate" "serious" "shared" "singles" "slight" "slot" "slow-zone" "speed" "square" "steady" "stop" "stud-wall" "stud-wall-touching" "test" "tool" "trained" "transmitter" "unavoidable" "under-insulation" "wall" "warning" "xlpe" "zero"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "on")
  (#any-of? @constant.builtin "bottom-edge" "closing-edge" "hinge-edge" "opening-edge" "post-edge" "receiving-edge"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "guards")
  (#any-of? @constant.builtin "hinge" "opening-side" "reach-through" "running-past" "underside"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "wire")
  (#any-of? @constant.builtin "signal" "supply" "test"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "force")
  (#any-of? @constant.builtin "closing" "opening"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "order")
  (#any-of? @constant.builtin "closing" "opening"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "terminal")
  (#any-of? @constant.builtin "command-input" "earth" "edge-input" "lamp-output" "lock-output" "motor" "normally-closed" "normally-open" "safety-input" "stop-input" "supply-in" "supply-out" "test-output" "two-wire-input"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "output")
  (#any-of? @constant.builtin "relay" "resistive" "two-wire"))

((line word: (word) @_line (word) @constant.builtin)
  (#any-of? @_line "option")
  (#any-of? @constant.builtin "any" "automatic" "hold-to-run" "impulse"))

((line word: (word) @_line (number unit: (word) @constant.builtin))
  (#any-of? @_line "acts" "breaker" "by" "component" "contact" "curve" "earthing" "expects-no" "force" "guards" "hinge-tilt" "infill-opening" "insulation" "kind" "lag" "measure" "method" "on" "opens" "option" "order" "output" "output-relay" "passes" "pedestrian-entrance" "performance-level" "release" "required-level" "risk" "rules" "sets" "shows" "sight" "signs" "slides" "stage" "terminal" "usage-class" "users" "watches" "wind" "wire")
  (#any-of? @constant.builtin "B" "C" "D" "E" "I" "II" "III" "IV" "TN" "TT" "a" "any" "articulated-arm" "automatic" "avoidable" "b" "beam" "blinking" "both-sides" "bottom-edge" "built" "c" "clock" "closed" "closing" "closing-edge" "command-input" "contactor-full-load" "contactor-small-load" "curtain" "d" "dark" "direct" "draft" "e" "earth" "edge" "edge-input" "emergency-stop" "error" "europe" "fence" "first" "flat" "force" "full" "handle" "hinge" "hinge-edge" "hold-to-run" "impulse" "intercom" "interlock-switch" "inward" "key" "key-switch" "keypad" "lag-closing" "lag-opening" "lamp-output" "left" "limited" "linear" "linear-ram" "lock-output" "logarithmic" "loop" "mechanical" "motor" "multicore" "none" "normally-closed" "normally-open" "north-america" "note" "nothing" "often" "one-side" "open" "opening" "opening-edge" "opening-side" "outward" "over-ceiling" "pedestrian" "position-switch" "post" "post-edge" "public" "push-button" "pvc" "rack" "reach-through" "receiving-edge" "relay" "relay-full-load" "relay-small-load" "resistive" "right" "round" "rubber" "running-past" "safety-input" "seat" "second" "seldom" "separate" "serious" "shared" "signal" "singles" "slight" "slot" "slow-zone" "speed" "square" "steady" "stop" "stop-input" "stud-wall" "stud-wall-touching" "supply" "supply-in" "supply-out" "test" "test-output" "tool" "trained" "transmitter" "two-wire" "two-wire-input" "unavoidable" "under-insulation" "underside" "wall" "warning" "xlpe" "zero"))

((line word: (word) @_line (number unit: (word) @constant.builtin))
  (#any-of? @_line "sets")
  (#any-of? @constant.builtin "dwell"))

