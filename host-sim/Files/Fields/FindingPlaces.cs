using System;
using System.Globalization;
using LubeController.Files.Reading;
using LubeController.Plant.Checking;

namespace LubeController.Files.Fields;

/// <summary>Gives a finding of a check the file, line and field that it comes from.</summary>
public static class FindingPlaces
{
    /// <summary>The problem that a finding is. What is not written is placed at the nearest group that is.</summary>
    /// <param name="group">The group at which the finding's path begins.</param>
    /// <param name="finding">The finding.</param>
    /// <param name="verdict">What it makes of the group.</param>
    public static Problem Problem(MapNode group, PlantFinding finding, string verdict)
    {
        YamlNode node = group;
        bool found = true;
        foreach (string part in finding.Path.Split('.'))
        {
            YamlNode? next = Step(node, part);
            found &= next is not null;
            node = next ?? node;
        }

        if (node is MapNode sourced && sourced["value"] is ScalarNode value)
            node = value;
        string path = group.Path.Length == 0 ? finding.Path : $"{group.Path}.{finding.Path}";
        return new Problem(node.Place, found ? node.Path : path, node is ScalarNode scalar ? scalar.Text : finding.Value, verdict, $"accepted is {finding.Accepted}");
    }

    private static YamlNode? Step(YamlNode node, string part)
    {
        int open = part.IndexOf('[');
        YamlNode? below = (node as MapNode)?[open < 0 ? part : part[..open]];
        if (open < 0)
            return below;
        int index = int.Parse(part.AsSpan(open + 1, part.Length - open - 2), CultureInfo.InvariantCulture);
        return below is ListNode list && index < list.Items.Count ? list.Items[index] : below;
    }
}
