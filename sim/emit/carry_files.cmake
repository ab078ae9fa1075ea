# cmake -DTREE=... -DNAMES=a,b,c -DOUT=... -P carry_files.cmake: writes OUT, a C++ source that holds the files
# NAMES of TREE as string literals. The same files give the same bytes.
string(REPLACE "," ";" names "${NAMES}")
set(text "// Written by sim/emit/carry_files.cmake.\n#include \"sim/emit/carried_files.hpp\"\n\n")
string(APPEND text "namespace dialplate {\n\nconst std::vector<CarriedFile>& carried_files() {\n")
string(APPEND text "    static const std::vector<CarriedFile> files = {\n")
foreach(name IN LISTS names)
    file(READ "${TREE}/${name}" content)
    string(APPEND text "{\"${name}\", R\"dialplate_file(${content})dialplate_file\"},\n")
endforeach()
string(APPEND text "    };\n    return files;\n}\n\n}  // namespace dialplate\n")
file(WRITE "${OUT}" "${text}")
