using System;
using System.Collections.Generic;
using System.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>The plant is physics: it must not know what watches or drives it.</summary>
public sealed class RoomTests
{
    private static readonly string[] ForbiddenWords = ["alarm", "stalled", "controller", "phase", "pulse timeout"];

    [Fact]
    public void The_plant_refers_to_no_other_room_and_to_no_package()
    {
        using AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(typeof(LubricationSystem).Assembly.Location);

        Assert.All(
            assembly.MainModule.AssemblyReferences,
            r => Assert.True(r.Name.StartsWith("System.", StringComparison.Ordinal), r.Name));
    }

    [Fact]
    public void No_name_and_no_text_in_the_plant_speaks_of_what_drives_it()
    {
        using AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(typeof(LubricationSystem).Assembly.Location);
        string[] words = [.. Words(assembly.MainModule)];

        Assert.True(words.Length > 500);
        Assert.DoesNotContain(words, w => ForbiddenWords.Any(f => w.Contains(f, StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void The_search_finds_a_word_where_there_is_one()
    {
        using AssemblyDefinition assembly = AssemblyDefinition.ReadAssembly(typeof(RoomTests).Assembly.Location);

        Assert.Contains(Words(assembly.MainModule), w => w.Contains("alarm", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Words(ModuleDefinition module)
    {
        foreach (TypeDefinition type in module.GetTypes())
        {
            yield return type.Name;
            foreach (FieldDefinition field in type.Fields)
            {
                yield return field.Name;
                if (field.Constant is string constant)
                    yield return constant;
            }

            foreach (PropertyDefinition property in type.Properties)
                yield return property.Name;
            foreach (MethodDefinition method in type.Methods)
            {
                yield return method.Name;
                foreach (ParameterDefinition parameter in method.Parameters)
                    yield return parameter.Name;
                foreach (Instruction instruction in method.HasBody ? method.Body.Instructions : [])
                {
                    if (instruction.OpCode == OpCodes.Ldstr)
                        yield return (string)instruction.Operand;
                }
            }
        }
    }
}
