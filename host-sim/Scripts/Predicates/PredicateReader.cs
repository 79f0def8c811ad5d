using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using LubeController.Emulator;
using LubeController.Files.Quantities;
using LubeController.Files.Reading;
using LubeController.Scripts.Signals;

namespace LubeController.Scripts.Predicates;

/// <summary>
/// Reads sentences such as <c>alarm divider-stalled is on</c> or <c>pressure line &gt;= 40 bar</c>, joined by <c>and</c>
/// and <c>or</c>, of which <c>and</c> binds more closely.
/// </summary>
public sealed class PredicateReader(SignalCatalogue catalogue, ProblemList problems)
{
    private const string Example = "write for instance 'alarm divider-stalled is on' or 'pressure line >= 40 bar'";

    private static readonly Dictionary<string, Relation> Signs = new(StringComparer.Ordinal)
    {
        ["is"] = Relation.Equal,
        ["="] = Relation.Equal,
        ["!="] = Relation.NotEqual,
        ["<"] = Relation.Less,
        ["<="] = Relation.LessOrEqual,
        [">"] = Relation.Greater,
        [">="] = Relation.GreaterOrEqual,
    };

    /// <summary>The predicate of a sentence, or null where a problem was added.</summary>
    public Predicate? Read(ScalarNode node)
    {
        List<string> words = Words(node.Text);
        return Join(Split(words, "or"), part => Join(Split(part, "and"), comparison => One(comparison, node), all: true), all: false);
    }

    private static Predicate? Join(List<List<string>> parts, Func<List<string>, Predicate?> read, bool all)
    {
        Predicate?[] read1 = parts.Select(read).ToArray();
        if (read1.Any(part => part == null))
            return null;
        return read1.Length == 1 ? read1[0] : new Joined(read1!, all);
    }

    private Comparison? One(List<string> words, ScalarNode node)
    {
        int at = words.FindIndex(Signs.ContainsKey);
        if (at <= 0 || at == words.Count - 1)
        {
            string found = words.Count == 0 ? "nothing stands beside 'and' or 'or'" : at < 0 ? "the sentence compares nothing" : at == 0 ? "the sentence names no signal" : "the sentence compares with nothing";
            problems.Add(node, found, Example);
            return null;
        }

        Relation relation = Signs[words[at]];
        List<string> right = words[(at + 1)..];
        if (words[at] == "is" && right[0] == "not")
        {
            relation = Relation.NotEqual;
            right = right[1..];
        }

        string name = string.Join('.', words[..at]);
        if (catalogue.Find(name) is not { } signal)
        {
            string[] known = catalogue.Signals.Select(candidate => candidate.Spoken).ToArray();
            problems.Add(node, $"nothing is recorded under the name '{ShortText.Of(name.Replace('.', ' '))}'", NearestName.Remedy(name.Replace('.', ' '), known));
            return null;
        }

        string sentence = string.Join(' ', words);
        string constant = string.Join(' ', right);
        return signal.IsWord ? Word(signal, relation, constant, sentence, node) : Number(signal, relation, constant, sentence, node);
    }

    private Comparison? Word(SignalInfo signal, Relation relation, string constant, string sentence, ScalarNode node)
    {
        string[] words = signal.Words.ToArray();
        if (relation is not (Relation.Equal or Relation.NotEqual))
        {
            problems.Add(node, $"'{signal.Spoken}' is a word, which is neither more nor less than another", $"write '{signal.Spoken} is {words[^1]}' or '{signal.Spoken} is not {words[^1]}'");
            return null;
        }

        int code = Array.IndexOf(words, constant);
        if (code >= 0)
            return new Comparison(signal, relation, code, "s", sentence);
        string? nearest = NearestName.Of(constant, words);
        problems.Add(node, $"'{signal.Spoken}' is never '{ShortText.Of(constant)}'", (nearest != null ? $"did you mean '{nearest}'? " : "") + $"known: {string.Join(", ", words)}");
        return null;
    }

    private Comparison? Number(SignalInfo signal, Relation relation, string constant, string sentence, ScalarNode node)
    {
        if (!QuantityReader.TryRead(constant, signal.Family, out Quantity quantity, out string message, out string remedy))
        {
            problems.Add(node, $"'{signal.Spoken}' is compared with '{ShortText.Of(constant)}': {message}", remedy);
            return null;
        }

        if (signal.Kind != SignalKind.Linear || relation is not (Relation.Equal or Relation.NotEqual))
            return new Comparison(signal, relation, quantity.Si, quantity.Unit, sentence);
        problems.Add(node, $"'{signal.Spoken}' moves without steps and equals a number only for an instant", $"write for instance '{signal.Spoken} >= {quantity}'");
        return null;
    }

    private static List<List<string>> Split(List<string> words, string joint)
    {
        var parts = new List<List<string>> { new() };
        foreach (string word in words)
        {
            if (word == joint)
                parts.Add([]);
            else
                parts[^1].Add(word);
        }

        return parts;
    }

    private static List<string> Words(string text)
    {
        var spaced = new StringBuilder();
        for (int index = 0; index < text.Length; index++)
        {
            char character = text[index];
            bool sign = character is '<' or '>' or '=' || (character == '!' && index + 1 < text.Length && text[index + 1] == '=');
            if (!sign)
            {
                spaced.Append(character);
                continue;
            }

            bool pair = character != '=' && index + 1 < text.Length && text[index + 1] == '=';
            spaced.Append(' ').Append(text, index, pair ? 2 : 1).Append(' ');
            index += pair ? 1 : 0;
        }

        return [.. spaced.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];
    }
}
