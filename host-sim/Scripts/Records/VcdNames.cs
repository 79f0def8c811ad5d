using System;
using System.Collections.Generic;
using System.Linq;

namespace LubeController.Scripts.Records;

/// <summary>Names and short codes as every viewer of value change dumps reads them.</summary>
internal static class VcdNames
{
    private const int FirstCode = '!';
    private const int Codes = '~' - '!' + 1;

    /// <summary>A name of letters, digits and underlines that no other has.</summary>
    public static string Unique(string name, HashSet<string> taken)
    {
        string plain = new(name.Select(character => char.IsAsciiLetterOrDigit(character) ? character : '_').ToArray());
        if (plain.Length == 0 || char.IsAsciiDigit(plain[0]))
            plain = "_" + plain;
        string unique = plain;
        for (int number = 2; !taken.Add(unique); number++)
            unique = FormattableString.Invariant($"{plain}_{number}");
        return unique;
    }

    /// <summary>The short code of a variable: printable characters, distinct for each index.</summary>
    public static string Code(int index)
    {
        string code = "";
        for (int rest = index + 1; rest > 0; rest = (rest - 1) / Codes)
            code += (char)(FirstCode + ((rest - 1) % Codes));
        return code;
    }
}
