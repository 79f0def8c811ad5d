using System;
using System.Collections;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace LubeController.Emulator;

/// <summary>The words of all codes of one kind, also as a list by the codes' numbers; empty where a number is no code.</summary>
public sealed class CodeWords<TCode> : IReadOnlyList<string>
    where TCode : struct, Enum
{
    private readonly string[] _byNumber;

    /// <summary>Makes a table.</summary>
    /// <param name="words">One word for each member of the enum, in any order.</param>
    /// <exception cref="ArgumentException">A code has no word, or two.</exception>
    public CodeWords(params CodeWord<TCode>[] words)
    {
        ArgumentNullException.ThrowIfNull(words);
        foreach (TCode code in Enum.GetValues<TCode>())
        {
            int count = words.Count(one => one.Code.Equals(code));
            if (count != 1)
                throw new ArgumentException($"{typeof(TCode).Name}.{code} has {count} words; give it one", nameof(words));
        }

        _byNumber = [.. Enumerable.Range(0, words.Max(one => NumberOf(one.Code)) + 1).Select(number => words.FirstOrDefault(one => NumberOf(one.Code) == number)?.Word ?? "")];
    }

    /// <inheritdoc/>
    public int Count => _byNumber.Length;

    /// <inheritdoc/>
    public string this[int index] => _byNumber[index];

    /// <summary>The word of a code.</summary>
    public string this[TCode code] => _byNumber[NumberOf(code)];

    /// <inheritdoc/>
    public IEnumerator<string> GetEnumerator() => ((IEnumerable<string>)_byNumber).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private static int NumberOf(TCode code) => Convert.ToInt32(code, CultureInfo.InvariantCulture);
}
