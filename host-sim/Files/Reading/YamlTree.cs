using System;
using System.Collections.Generic;
using System.IO;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace LubeController.Files.Reading;

/// <summary>
/// Builds nodes from the events of the YAML parser. Events rather than objects, because every value must know its line,
/// and because nothing may be loaded by reflection where the host is compiled ahead of time.
/// </summary>
public sealed class YamlTree
{
    /// <summary>Deepest nesting read.</summary>
    public const int Deepest = 16;

    /// <summary>Most values read of one file.</summary>
    public const int MostNodes = 20_000;

    /// <summary>Longest single text read, characters.</summary>
    public const int LongestText = 2_000;

    private readonly string _file;
    private readonly string _text;
    private readonly ProblemList _problems;
    private readonly Parser _parser;
    private int _nodes;
    private string _path = "";

    private YamlTree(string file, string text, ProblemList problems)
    {
        _file = file;
        _text = text;
        _problems = problems;
        _parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
    }

    /// <summary>The top group of fields of a file, or null where a problem was added.</summary>
    public static MapNode? Read(string path, ProblemList problems)
    {
        string? text = SourceText.Read(path, problems);
        return text == null ? null : Parse(path, text, problems);
    }

    /// <summary>The top group of fields of a text, or null where a problem was added.</summary>
    public static MapNode? Parse(string file, string text, ProblemList problems)
    {
        int before = problems.Count;
        if (TabIndent.Refused(file, text, problems))
            return null;
        var tree = new YamlTree(file, text, problems);
        try
        {
            MapNode? top = tree.Document();
            return problems.Count == before ? top : null;
        }
        catch (YamlException reason)
        {
            tree.Add(reason.Start, tree._path, tree.LineAt(reason.Start), SyntaxRemedy.Message(reason), SyntaxRemedy.For(reason));
        }
        catch (TreeBoundException)
        {
            // The problem has been added where the bound was met.
        }

        return null;
    }

    private MapNode? Document()
    {
        Next<StreamStart>();
        Move();
        if (_parser.Current is StreamEnd)
        {
            Add(Mark.Empty, "", "", "the file is empty", "write the fields of the format; hil-scripts/README.md lists them");
            return null;
        }

        Move();
        YamlNode? top = Node("", 0);
        Move();
        Move();
        if (_parser.Current is DocumentStart second)
        {
            Add(second.Start, "", LineAt(second.Start), "a second document begins here", "keep one document in a file: delete the line of three hyphens or split the file");
            return null;
        }

        if (top is MapNode map)
            return map;
        if (top != null)
            _problems.Add(top, $"the file holds {top.Sort}", "write fields, each as 'name: value' on a line of its own");
        return null;
    }

    /// <summary>
    /// Takes the next event. The parser answers some malformed texts with exceptions that are not its own and have no
    /// mark; they become its own, at the last place it knew.
    /// </summary>
    private bool Move()
    {
        Mark last = _parser.Current?.End ?? Mark.Empty;
        try
        {
            return _parser.MoveNext();
        }
        catch (Exception reason) when (reason is not YamlException)
        {
            throw new YamlException(last, last, "after this, the text follows no rule that the parser knows", reason);
        }
    }

    private void Next<T>()
        where T : ParsingEvent
    {
        if (!Move() || _parser.Current is not T)
            throw new InvalidOperationException($"the parser gave {_parser.Current} instead of {typeof(T).Name}");
    }

    private YamlNode? Node(string path, int depth)
    {
        _path = path;
        ParsingEvent current = _parser.Current!;
        if (++_nodes > MostNodes)
            throw Bound(current.Start, path, $"{MostNodes} values", $"the file holds more than {MostNodes} values", "split it, or share parts under 'based-on'");
        if (current is AnchorAlias alias)
            throw Bound(current.Start, path, "*" + alias.Value, "references to other parts ('*name') are not read", "write the value out, or share parts of files under 'based-on'");
        var node = (NodeEvent)current;
        if (!node.Anchor.IsEmpty)
            throw Bound(current.Start, path, "&" + node.Anchor, "names for parts ('&name') are not read", "write the value out, or share parts of files under 'based-on'");
        if (!node.Tag.IsEmpty)
            throw Bound(current.Start, path, node.Tag.ToString(), "type marks ('!name') are not read", "delete the mark; the field decides the type");
        return current switch
        {
            Scalar scalar => Single(scalar, path),
            SequenceStart => List(path, depth),
            _ => Map(path, depth),
        };
    }

    private ScalarNode Single(Scalar scalar, string path)
    {
        if (scalar.Value.Length > LongestText)
            throw Bound(scalar.Start, path, scalar.Value, $"the text has {scalar.Value.Length} characters, at most {LongestText} are read", "shorten it");
        return new ScalarNode(Place(scalar.Start), path, scalar.Value, scalar.Style == ScalarStyle.Plain);
    }

    private ListNode List(string path, int depth)
    {
        Mark start = Enter(path, depth);
        var items = new List<YamlNode>();
        while (Move() && _parser.Current is not SequenceEnd)
        {
            if (Node($"{path}[{items.Count}]", depth + 1) is { } item)
                items.Add(item);
        }

        _path = path;
        return new ListNode(Place(start), path, items);
    }

    private MapNode Map(string path, int depth)
    {
        Mark start = Enter(path, depth);
        var entries = new List<MapEntry>();
        var seen = new Dictionary<string, Mark>(StringComparer.Ordinal);
        while (Move() && _parser.Current is not MappingEnd)
        {
            Mark at = _parser.Current!.Start;
            string key = Key(path);
            string field = path.Length == 0 ? key : $"{path}.{key}";
            _path = field;
            Move();
            YamlNode? value = Node(field, depth + 1);
            if (!seen.TryAdd(key, at))
                Add(at, field, value?.Shown ?? "", $"the field stands twice, first on line {seen[key].Line}", "keep one of the two");
            else if (value != null)
                entries.Add(new MapEntry(key, Place(at), value));
        }

        _path = path;
        return new MapNode(Place(start), path, entries);
    }

    private string Key(string path)
    {
        if (_parser.Current is Scalar { Value.Length: > 0 } key && key.Tag.IsEmpty && key.Anchor.IsEmpty)
        {
            return key.Value.Length <= LongestText ? key.Value
                : throw Bound(key.Start, path, key.Value, $"the field's name has {key.Value.Length} characters", "use the names of the format");
        }

        Mark at = _parser.Current!.Start;
        throw Bound(at, path, LineAt(at), "a field's name must be a plain word", "write 'name: value'; put quotes around a value that begins with a sign");
    }

    private Mark Enter(string path, int depth)
    {
        Mark start = _parser.Current!.Start;
        return depth < Deepest ? start
            : throw Bound(start, path, LineAt(start), $"groups and lists are nested deeper than {Deepest}", "no format needs so many levels: check the indentation and the brackets");
    }

    private TreeBoundException Bound(Mark at, string path, string value, string message, string remedy)
    {
        Add(at, path, value, message, remedy);
        return new TreeBoundException();
    }

    private void Add(Mark at, string path, string value, string message, string remedy) =>
        _problems.Add(new Problem(Place(at), path, value, message, remedy));

    private SourcePlace Place(Mark mark) => new(_file, Math.Max(1, (int)mark.Line), Math.Max(1, (int)mark.Column));

    private string LineAt(Mark mark)
    {
        int from = (int)Math.Min(mark.Index, _text.Length);
        int start = from == 0 ? 0 : _text.LastIndexOf('\n', from - 1) + 1;
        int end = _text.IndexOf('\n', start);
        return (end < 0 ? _text[start..] : _text[start..end]).Trim();
    }

    private sealed class TreeBoundException : Exception;
}
