using System.IO;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Scripts.Tests.Schemas;

/// <summary>A page that is not what code makes is refused by name, line and remedy.</summary>
public sealed class MadePageTests
{
    [Fact]
    public void A_page_as_it_is_made_passes() => MadePage.Check("README.md", page => page);

    [Fact]
    public void A_page_that_differs_is_refused_with_its_first_different_line_and_the_command_that_renews_it()
    {
        string title = File.ReadAllLines(Path.Combine(Repository.Root, "README.md"))[0];
        InvalidDataException refused = Assert.Throws<InvalidDataException>(() => MadePage.Check("README.md", page => "# Another title\n" + page));
        Assert.Equal($"README.md is not what code makes: line 1 is '{title}' where '# Another title' is made; renew it with 'tests/renew'", refused.Message);
    }

    [Fact]
    public void Only_what_stands_between_two_texts_is_replaced()
    {
        Assert.Equal("a\n| x |\nnew\n\n## b\n", MadePage.Between("a\n| x |\nold\n\n## b\n", "| x |\n", "\n## ", "new\n"));
        Assert.Throws<InvalidDataException>(() => MadePage.Between("a\n", "| x |\n", "\n## ", "new"));
        Assert.Throws<InvalidDataException>(() => MadePage.Between("| x |\n", "| x |\n", "\n## ", "new"));
    }
}
