using System.Linq;
using LubeController.Files.Reading;
using Xunit;

namespace LubeController.Files.Tests.Reading;

public sealed class YamlTreeTests
{
    [Fact]
    public void Every_value_knows_its_line_column_and_field()
    {
        MapNode top = Parse("a: 1\nlist:\n  - x: red\n    y: blue\n");
        var list = (ListNode)top["list"]!;
        var y = (ScalarNode)((MapNode)list.Items[0])["y"]!;
        Assert.Equal(("list[0].y", "blue"), (y.Path, y.Text));
        Assert.Equal(new SourcePlace("f.yaml", 4, 8), y.Place);
    }

    [Theory]
    [InlineData("a: 1\nb: 2\na: 3\n", 3, "a", "the field stands twice, first on line 1")]
    [InlineData("a:\n\t- 1\n", 2, "(whole file)", "a tab indents this line")]
    [InlineData("", 1, "", "the file is empty")]
    [InlineData("# nothing\n", 1, "", "the file is empty")]
    [InlineData("- 1\n- 2\n", 1, "", "the file holds a list")]
    [InlineData("just words\n", 1, "", "the file holds a single value")]
    [InlineData("a: 1\n---\nb: 2\n", 2, "", "a second document begins here")]
    [InlineData("a: &name 1\n", 1, "a", "names for parts ('&name') are not read")]
    [InlineData("a: *name\n", 1, "a", "references to other parts ('*name') are not read")]
    [InlineData("a: !!int 1\n", 1, "a", "type marks ('!name') are not read")]
    [InlineData("? [a, b]\n: 1\n", 1, "", "a field's name must be a plain word")]
    [InlineData("a: 'open\nb: 2\n", 1, "a", "quoted scalar")]
    [InlineData("a: [1, 2\n", 2, "a[1]", "not readable as YAML")]
    [InlineData("a: b: c\n", 1, "a", "not readable as YAML")]
    public void What_is_not_plain_is_refused_where_it_stands(string text, int line, string field, string message)
    {
        var problems = new ProblemList();
        Assert.Null(YamlTree.Parse("f.yaml", text, problems));
        Problem problem = Assert.Single(problems.All);
        Assert.Contains(message, problem.Message);
        Assert.Equal((line, field), (problem.Place.Line, problem.Field));
        Assert.NotEqual("", problem.Remedy);
    }

    [Fact]
    public void Nesting_has_a_bound()
    {
        string deep = string.Concat(Enumerable.Repeat("[", YamlTree.Deepest)) + "1" + string.Concat(Enumerable.Repeat("]", YamlTree.Deepest));
        Assert.Contains("nested deeper than", Refusal("a: " + deep));
        string allowed = string.Concat(Enumerable.Repeat("[", YamlTree.Deepest - 1)) + "1" + string.Concat(Enumerable.Repeat("]", YamlTree.Deepest - 1));
        Parse("a: " + allowed);
    }

    [Fact]
    public void The_number_of_values_has_a_bound() =>
        Assert.Contains("more than", Refusal("a: [" + string.Join(",", Enumerable.Repeat("1", YamlTree.MostNodes)) + "]"));

    [Fact]
    public void The_length_of_a_text_has_a_bound() =>
        Assert.Contains("characters", Refusal("a: " + new string('x', YamlTree.LongestText + 1)));

    [Fact]
    public void Several_doubled_fields_are_told_at_once()
    {
        var problems = new ProblemList();
        YamlTree.Parse("f.yaml", "a: 1\na: 2\nb: 1\nb: 2\n", problems);
        Assert.Equal([2, 4], problems.All.Select(problem => problem.Place.Line));
    }

    [Fact]
    public void A_problem_prints_place_field_value_message_and_remedy()
    {
        var problem = new Problem(new SourcePlace("a/b.yaml", 3, 7), "steps[2].at", "5 bananas", "what is wrong", "what would do");
        Assert.Equal("a/b.yaml:3:7: field 'steps[2].at' is '5 bananas': what is wrong; what would do", problem.ToString());
    }

    private static MapNode Parse(string text)
    {
        var problems = new ProblemList();
        MapNode? top = YamlTree.Parse("f.yaml", text, problems);
        Assert.Empty(problems.All);
        return top!;
    }

    private static string Refusal(string text)
    {
        var problems = new ProblemList();
        Assert.Null(YamlTree.Parse("f.yaml", text, problems));
        return Assert.Single(problems.All).Message;
    }
}
