using System;
using System.IO;
using System.Linq;
using System.Reflection;
using LubeController.Analysis.Specification;
using LubeController.Tests.Support;
using Xunit;

namespace LubeController.Analysis.Tests.Specification;

/// <summary>What the rules leave open is labelled so in the code, and listed on the page for contributors.</summary>
public sealed class RegressionModelTests
{
    [Fact]
    public void The_page_for_contributors_lists_each_regression_model_and_no_other()
    {
        const BindingFlags Any = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        string[] labelled = [.. typeof(LubricationSpecification).Assembly.GetTypes()
            .SelectMany(type => type.GetMembers(Any).Where(member => member is not Type).Append(type))
            .Select(member => (Member: member, Label: member.GetCustomAttribute<RegressionModelAttribute>()))
            .Where(found => found.Label is not null)
            .Select(found => $"| `{(found.Member is Type type ? type.Name : $"{found.Member.DeclaringType!.Name}.{found.Member.Name}")}` | {found.Label!.Silent} |")
            .Order(StringComparer.Ordinal)];
        string[] listed = [.. File.ReadAllLines(Path.Combine(Repository.Root, "DEVELOPERS.md"))
            .SkipWhile(line => line != "| regression model | what the rules leave open |").Skip(2).TakeWhile(line => line.StartsWith('|'))];

        Assert.NotEmpty(labelled);
        Assert.Equal(labelled, listed);
    }
}
