using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator.Storage;
using Xunit;

namespace LubeController.Board.Tests;

/// <summary>Two banks of settings, and what becomes of banks that another program wrote.</summary>
public sealed class SettingsMemoryTests
{
    private readonly FlashStorage _storage = new(MemoryLayout.FewestBlocks, MemoryLayout.UsualBlockLength);

    [Fact]
    public void No_two_settings_are_kept_under_one_number() =>
        Assert.Equal(SettingField.Count, Enumerable.Range(0, SettingField.Count).Select(field => SettingsMemory.NumberOf(SettingTable.Spec(field).Name)).Distinct().Count());

    // FNV-1a, 32 bits: test vectors "" and "a" as published with the algorithm (Fowler, Noll, Vo; from memory).
    [Theory]
    [InlineData("", 0x811C9DC5)]
    [InlineData("a", 0xE40C292C)]
    public void The_number_of_a_name_is_its_fnv_1a(string name, uint number) => Assert.Equal(number, SettingsMemory.NumberOf(name));

    [Fact]
    public void Every_setting_comes_back_as_it_was_stored()
    {
        var settings = new Settings();
        for (int field = 0; field < SettingField.Count; field++)
            settings[field] = (field * 7919) - 3;
        Assert.True(new SettingsMemory(_storage, 0).Store(settings));
        var memory = new SettingsMemory(_storage, 0);
        Assert.Equal(SettingsState.Stored, memory.State);
        Assert.All(Enumerable.Range(0, SettingField.Count), field => Assert.Equal(settings[field], memory.Values[field]));
    }

    [Fact]
    public void Both_banks_hold_what_was_stored_last()
    {
        var memory = new SettingsMemory(_storage, 0);
        memory.Store(With(10_000));
        memory.Store(With(20_000));
        for (int bank = 0; bank < 2; bank++)
        {
            _storage.FlipBit(bank, 8 * 50);
            Assert.Equal(20_000, new SettingsMemory(_storage, 0).Values[SettingField.RestMs]);
            _storage.FlipBit(bank, 8 * 50);
        }
    }

    [Theory]
    [InlineData(TearRest.Old)]
    [InlineData(TearRest.Erased)]
    [InlineData(TearRest.Garbage)]
    public void A_torn_store_leaves_the_old_or_the_new_and_a_torn_first_one_nothing(TearRest rest)
    {
        for (int cut = 0; cut < 1200; cut += 7)
        {
            var storage = new FlashStorage(8, MemoryLayout.UsualBlockLength);
            storage.TearNextWriteAt(cut, rest);
            new SettingsMemory(storage, 0).Store(With(10_000));
            storage.PowerBack();
            var first = new SettingsMemory(storage, 0);
            Assert.True(first.State is SettingsState.NeverStored or SettingsState.Stored);
            first.Store(With(10_000));
            storage.TearNextWriteAt(cut, rest);
            first.Store(With(20_000));
            storage.PowerBack();
            var next = new SettingsMemory(storage, 0);
            Assert.Equal(SettingsState.Stored, next.State);
            Assert.Contains(next.Values[SettingField.RestMs], new[] { 10_000, 20_000 });
        }
    }

    [Fact]
    public void A_bank_of_an_older_version_with_fewer_settings_takes_presets_for_the_rest()
    {
        WriteBank(0, (SettingTable.Spec(SettingField.RestMs).Name, 77_000), (SettingTable.Spec(SettingField.DoseEdges).Name, 9));
        var memory = new SettingsMemory(_storage, 0);
        Assert.Equal(SettingsState.Stored, memory.State);
        Assert.Equal((77_000, 9, new Settings()[SettingField.SaveIntervalMs]), (memory.Values[SettingField.RestMs], memory.Values[SettingField.DoseEdges], memory.Values[SettingField.SaveIntervalMs]));
    }

    [Fact]
    public void A_bank_of_a_newer_version_or_with_a_setting_that_nobody_knows_is_refused()
    {
        WriteBank(SettingsMemory.Version + 1, (SettingTable.Spec(SettingField.RestMs).Name, 77_000));
        Assert.Equal(SettingsState.Refused, new SettingsMemory(_storage, 0).State);
        var other = new FlashStorage(8, MemoryLayout.UsualBlockLength);
        WriteBank(other, SettingsMemory.Version, ("invented-setting", 1));
        Assert.Equal(SettingsState.Refused, new SettingsMemory(other, 0).State);
    }

    [Fact]
    public void Settings_that_were_stored_once_and_of_which_no_bank_is_whole_are_lost()
    {
        new SettingsMemory(_storage, 0).Store(With(10_000));
        _storage.FlipBit(0, 8 * 50);
        _storage.FlipBit(1, 8 * 50);
        var memory = new SettingsMemory(_storage, 0);
        Assert.Equal(SettingsState.Lost, memory.State);
        Assert.False(new SettingsCheck().Accepts(SettingsMemory.Unreadable(), false));
    }

    [Fact]
    public void A_bank_that_takes_a_write_and_reads_back_wrong_does_not_count_as_stored()
    {
        var memory = new SettingsMemory(_storage, 0);
        memory.Store(With(10_000));
        _storage.WearOutAfter(0, WornBlock.FlipsBit);
        Assert.False(memory.Store(With(20_000)));
        Assert.Equal((10_000, 1), (memory.Values[SettingField.RestMs], memory.Stores));
        Assert.Equal(10_000, new SettingsMemory(_storage, 0).Values[SettingField.RestMs]);
    }

    private static Settings With(int restMs)
    {
        var settings = new Settings();
        settings[SettingField.RestMs] = restMs;
        return settings;
    }

    private void WriteBank(int version, params (string Name, int Value)[] fields) => WriteBank(_storage, version, fields);

    private static void WriteBank(FlashStorage storage, int version, params (string Name, int Value)[] fields)
    {
        var ring = new BlockRing(storage, BlockKind.Settings, version, 0, 2, 4000, true);
        List<byte> payload = [.. BitConverter.GetBytes(1), .. BitConverter.GetBytes(fields.Length)];
        foreach ((string name, int value) in fields)
            payload.AddRange([.. BitConverter.GetBytes(SettingsMemory.NumberOf(name)), .. BitConverter.GetBytes(value)]);
        payload.CopyTo(ring.Frame, BlockRing.HeaderLength);
        Assert.True(ring.Write(payload.Count));
    }
}
