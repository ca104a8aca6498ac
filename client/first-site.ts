// What a new file starts with: the least that makes a whole site, with a library to be named.
export const firstSite = `language 1

# Name the library files of your panels, drives and sensors:
# use "library/panels.gate"

site "Name of the place" {
  rules europe
  users limited
  sight none
  supply 230 V 50 Hz
}

leaf gate {
  width 2.50 m
  height 1.80 m
  mass 180 kg
  opens inward 95 deg
}
`;
