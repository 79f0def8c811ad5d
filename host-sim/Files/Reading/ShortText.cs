using System.Text;

namespace LubeController.Files.Reading;

/// <summary>Makes any text fit for one line of a message.</summary>
public static class ShortText
{
    private const int Longest = 60;

    /// <summary>The text on one line, control characters made visible, at most 60 characters; never null.</summary>
    public static string Of(string text)
    {
        var line = new StringBuilder();
        foreach (char character in text)
        {
            if (line.Length >= Longest)
                return line.Append("...").ToString();
            line.Append(character switch
            {
                '\n' or '\r' => ' ',
                '\t' => '→',
                < ' ' or '\u007f' => '?',
                _ => character,
            });
        }

        return line.ToString();
    }
}
